// SPDX-License-Identifier: Apache-2.0
// Sentences in other languages of people, and the steps of an inspection in each.
import { enumeration, layout } from "./describe.mjs";
import { check, errorBytes, refuse, RodtravelError, textFrom } from "./error.mjs";
import { identificationJson } from "./identify.mjs";
import { partsOf, putKept, recordName } from "./kept.mjs";
import { c, put, scratch, textAt, textPointer, uint32At, written } from "./memory.mjs";
import { rulesPointer, ruleSet } from "./rules.mjs";
import { fill, numberOfWord, onlyKnown, textOnly } from "./values.mjs";
import { vehicleJson } from "./vehicles.mjs";

const [MESSAGE, CATALOGUE, AIR_READING, AIR_LIMIT] = [
    "rodt_message",
    "rodt_catalogue",
    "rodt_air_reading",
    "rodt_air_limit",
].map(layout);
const reasonWords = enumeration("rodt_reason");
const mismatchWords = enumeration("rodt_axle_mismatch");
const stepWords = enumeration("rodt_step");
const partWords = enumeration("rodt_step_part");
const vehicleWords = enumeration("rodt_vehicle_class");
const ENGLISH = 0;

/** A sentence that a function of C makes as data, in the language of a catalogue. */
function sentence(catalogue, make) {
    return scratch(() => {
        const message = MESSAGE.take();
        check(make(message));
        return textFrom(written((...room) => c.rodt_message_format(message, catalogue, ...room)));
    });
}

/** What makes the sentence of an object, by the record that it is. */
const SAID = {
    rodt_finding: c.rodt_finding_message,
    rodt_air_finding: c.rodt_air_finding_message,
    rodt_count: c.rodt_count_message,
};

const SPOKEN = { rodt_finding: c.rodt_finding_spoken_message, rodt_air_finding: c.rodt_air_finding_spoken_message };

function sayError(catalogue, error) {
    const bytes = errorBytes(error);
    if (bytes === undefined) return error.text;
    return sentence(catalogue, (message) => c.rodt_error_message(put(bytes), message));
}

function sayRemark(catalogue, remark) {
    const [mismatch] = partsOf(remark, "remark");
    const number = mismatchWords.numberOf(mismatch);
    return sentence(catalogue, (message) =>
        c.rodt_axle_mismatch_message(putKept(remark, "remark", "rodt_axle_finding"), number, message),
    );
}

function sayBy(makers, catalogue, what) {
    const record = recordName(what, "what is said");
    if (makers[record] === undefined) throw new TypeError("a catalogue does not say such an object");
    return sentence(catalogue, (message) => makers[record](putKept(what, "what is said", record), message));
}

/** A function of an air finding that a catalogue says. */
const airSentence = (catalogue, finding, make) =>
    sentence(catalogue, (message) => make(putKept(finding, "finding", "rodt_air_finding"), message));

const pointersOfCatalogues = new WeakMap();
const pointerOf = (catalogue) => pointersOfCatalogues.get(catalogue);

function vehicleOf({ vehicle, towedUnits, built }) {
    return fill(AIR_READING, AIR_READING.take(), { vehicle, towedUnits, built });
}

/** The rows that a step can have; one that is null where it has none. */
function rowsOfStep(step, rules, reading) {
    const rows = [];
    for (let row = 0; (row = c.rodt_step_row_at(step, rules, reading, rows.length)) !== 0;) rows.push(row);
    return rows.length === 0 ? [0] : rows;
}

function stepText(catalogue, step, rules, row) {
    const made = { step: stepWords.wordOf(step), row: AIR_LIMIT.readConstant(row) };
    for (const [part, word] of partWords.word) {
        made[word] = sentence(catalogue, (message) => c.rodt_step_message(step, part, rules, row, message));
    }
    return Object.freeze(made);
}

function stepsIn(catalogue, named, options) {
    const given = onlyKnown(options, ["vehicle", "towedUnits", "built"], "steps");
    const of = ruleSet(named);
    return scratch(() => {
        const [rules, reading] = [rulesPointer(of), vehicleOf(given)];
        const vehicle = numberOfWord("rodt_vehicle_class", given.vehicle ?? vehicleWords.wordOf(0), "vehicle");
        const numbers = Array.from({ length: c.rodt_step_count(rules, vehicle) }, (_, i) =>
            c.rodt_step_at(rules, vehicle, i),
        );
        return Object.freeze(
            numbers.flatMap((step) =>
                rowsOfStep(step, rules, reading).map((row) => stepText(catalogue, step, rules, row)),
            ),
        );
    });
}

/**
 * Every step of an inspection by `rules`, in its order: { step, row, title, do, see, good, defective }. A step with
 * several rows, one for each vehicle that is not ruled out by `vehicle`, `towedUnits` and `built`, comes once for each.
 */
export const steps = (rules = undefined, options = {}) => stepsIn(ENGLISH, rules, options);

/** The sentences of a language that the library has. Made by catalogue. */
export class Catalogue {
    constructor(at) {
        if (!pointersOfCatalogues.has(this)) pointersOfCatalogues.set(this, at);
        this.language = textAt(uint32At(at + CATALOGUE.offset("language")));
        Object.freeze(this);
    }

    /** The sentence that a Finding, an AirFinding, a Count, a remark of an axle or a RodtravelError has in English. */
    say(what) {
        if (what instanceof RodtravelError) return sayError(pointerOf(this), what);
        if (recordName(what, "what is said") === "rodt_axle_finding") return sayRemark(pointerOf(this), what);
        return sayBy(SAID, pointerOf(this), what);
    }

    /** What one says aloud of a Finding or an AirFinding. */
    spoken(what) {
        return sayBy(SPOKEN, pointerOf(this), what);
    }

    /** One sentence for each reason of a Finding. */
    reasons(finding) {
        return finding.reasons.map((word) =>
            sentence(pointerOf(this), (message) =>
                c.rodt_finding_reason_message(
                    putKept(finding, "finding", "rodt_finding"),
                    reasonWords.numberOf(word),
                    message,
                ),
            ),
        );
    }

    /** What the divisions of the tape prove; "" without a division. */
    proof(finding) {
        return sentence(pointerOf(this), (message) =>
            c.rodt_finding_proof_message(putKept(finding, "finding", "rodt_finding"), message),
        );
    }

    /** What would have been defective by an AirFinding. */
    edge(finding) {
        return airSentence(pointerOf(this), finding, c.rodt_air_finding_edge_message);
    }

    /** What an AirFinding does not settle. */
    note(finding) {
        return airSentence(pointerOf(this), finding, c.rodt_air_finding_note_message);
    }

    /** What an advice of a VehicleFinding says. */
    advice(word) {
        const number = numberOfWord("rodt_advice", word, "advice");
        return sentence(pointerOf(this), (message) => c.rodt_advice_message(number, message));
    }

    /** A text of the tables, `published` or `setup` of a row of air checks; itself where there is no translation. */
    text(english) {
        return scratch(() => textAt(c.rodt_catalogue_text(pointerOf(this), textPointer(textOnly(english, "text")))));
    }

    /** The steps of an inspection, as steps gives them. */
    steps(rules = undefined, options = {}) {
        return stepsIn(pointerOf(this), rules, options);
    }

    /** The report of a finding, a vehicle or an identification as JSON. */
    json(what) {
        const record = recordName(what, "what is reported");
        if (record === "rodt_vehicle_finding") return vehicleJson(what, pointerOf(this));
        if (record === "rodt_identification") return identificationJson(what, pointerOf(this));
        const format = { rodt_finding: c.rodt_finding_json_format, rodt_air_finding: c.rodt_air_finding_json_format }[
            record
        ];
        if (format === undefined) throw new TypeError("such an object has no report");
        return scratch(() => {
            const at = putKept(what, "what is reported", record);
            return textFrom(written((...room) => format(at, pointerOf(this), 0, ...room)));
        });
    }
}

/** The Catalogue of a language, "fr", "fr-CA", "es", or the name of a locale. English needs none. */
export function catalogue(language) {
    const at = scratch(() => c.rodt_catalogue_find(textPointer(textOnly(language, "language"))));
    if (at === 0) refuse("argument", `there is no catalogue of "${language}"`, "language");
    return new Catalogue(at);
}
