# SPDX-License-Identifier: Apache-2.0
"""Sentences in other languages of people."""
from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from . import _rodtravel as _low
from ._error import Error, Status
from ._air import AirFinding
from ._findings import Finding
from ._record import Record
from ._vehicles import AxleRemark, Count


def english_sentences() -> dict[str, str]:
    """What can be said: the English template of each code. A translation has the same arguments in braces.

    >>> english_sentences()["stroke.over-limit"]
    'stroke is over the limit by {excess}'
    """
    return dict(_low.english_sentences())


def _plain(record: Record) -> tuple[Any, ...]:
    """The wrapper's tuple of a record and of those inside of it."""
    return tuple(_plain(value) if isinstance(value, Record) else value for value in record._raw())


class Catalogue:
    """The sentences of a language: a template under each code of english_sentences. What it lacks is said in English.

    `plural` is the rule by which {brakes?brake|brakes} chooses a form: "alike", "one-other", "below-two" or
    "one-few-many". A template with other arguments than the English one, or with a broken brace, is an Error.

    >>> french = Catalogue("fr-CA", {"stroke.over-limit": "la course dépasse la limite de {excess}"}, decimal_sign=",")
    >>> finding = judge("30 standard", "2 1/8", "4 3/8", psi=95)
    >>> french.reasons(finding)[0]
    'la course dépasse la limite de 1/4'
    >>> len(french.missing) == len(english_sentences()) - 1
    True
    """

    __slots__ = ("_kept", "language", "missing")
    language: str
    missing: tuple[str, ...]

    def __init__(self, language: str, templates: Mapping[str, str], *, decimal_sign: str = ".",
                 plural: str = "one-other") -> None:
        self._kept = _low.catalogue_new((language, decimal_sign, tuple(templates.items())), plural)
        self.language = language
        self.missing = tuple(code for code in english_sentences() if code not in templates)

    def say(self, what: Finding | AirFinding | AxleRemark | Count | Error) -> str:
        """The sentence that `str()` is in English; of an Error its bare sentence, of an AxleRemark its `sentence`.

        >>> spanish = Catalogue("es", {"line.at-limit": "de {released} a {applied}: {stroke}; justo en el límite {limit}"})
        >>> spanish.say(judge("30 standard", "2", "4"))
        'de 2 a 4: 2; justo en el límite 2'
        """
        if isinstance(what, Error):
            return _low.say_error(self._kept, what.parts, what.text)
        if isinstance(what, Count):
            return _low.say_count(self._kept, _plain(what))
        if isinstance(what, (AirFinding, AxleRemark)):
            return _low.say_message(self._kept, what._message)
        if not isinstance(what, Finding):
            raise TypeError("a catalogue says a Finding, an AirFinding, an AxleRemark, a Count or an Error")
        return _low.say_finding(self._kept, what._kept)

    def spoken(self, what: Finding | AirFinding) -> str:
        """What one says aloud, as `spoken` of a Finding or an AirFinding has it in English.

        >>> catalogue("fr").spoken(judge_air("warning", pressure=62, rules="us-cdl"))[:20]
        "L'avertisseur de bas"
        """
        if isinstance(what, AirFinding):
            return _low.say_message(self._kept, what._spoken_message)
        return _low.say_spoken(self._kept, what._kept)

    def edge(self, finding: AirFinding) -> str:
        """What would have been defective, as `edge` of an AirFinding has it in English; "" without a row."""
        return _low.say_message(self._kept, finding._edge_message)

    def note(self, finding: AirFinding) -> str:
        """What an AirFinding does not settle, as its `note` has it in English; "" where there is nothing to say."""
        return _low.say_message(self._kept, finding._note_message)

    def reasons(self, finding: Finding) -> tuple[str, ...]:
        """One sentence for each reason, as `finding.sentences` has them in English.

        >>> Catalogue("en", {}).reasons(judge("clamp 30 standard", "2", "2", psi=95))
        ('the rod did not move: look for a broken or seized part, or no air',)
        """
        return tuple(_low.say_reason(self._kept, finding._kept, reason.number) for reason in finding.reasons)

    def proof(self, finding: Finding) -> str:
        """What the divisions of the tape prove; "" without a division.

        >>> Catalogue("en", {}).proof(judge("30 standard", "2", "3", division="1/16")).split(":")[0]
        'proven within'
        """
        return _low.say_proof(self._kept, finding._kept)


def catalogue(language: str) -> Catalogue:
    """The Catalogue of the library for a language, complete: "fr", "fr-CA", "es", or the name of a locale.

    Raises Error where the library has none. English needs no catalogue: every sentence is in English.

    >>> french = catalogue("fr_CA.UTF-8")
    >>> french.language, french.missing
    ('fr-CA', ())
    >>> french.say(judge("30 standard", "2", "4 1/8"))
    'de 2 po à 4 1/8 po, course de 2 1/8 po; limite 2 po; dépassement de 1/8 po'
    """
    found = _low.catalogue_find(language)
    if found is None:
        raise Error(Status.ARGUMENT, f"there is no catalogue of {language!r}", field="language")
    made = object.__new__(Catalogue)
    made._kept, made.language = found
    made.missing = ()
    return made
