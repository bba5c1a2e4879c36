// SPDX-License-Identifier: Apache-2.0
// Which chamber it is, by what can be seen of it.
import { putChamber } from "./chambers.mjs";
import { enumeration, layout } from "./describe.mjs";
import { checked, textFrom } from "./error.mjs";
import { keptRecord, partsOf, putKept } from "./kept.mjs";
import { c, memory, scratch, textAt, written } from "./memory.mjs";
import { rulesPointer, ruleSet } from "./rules.mjs";
import { fill, isGiven, onlyKnown, putDate } from "./values.mjs";

const CLUES = layout("rodt_clues");
const CHAMBER = layout("rodt_chamber");
const IDENTIFICATION = layout("rodt_identification");
const observations = enumeration("rodt_observation");
const clueNames = CLUES.values.map((member) => member.name);

/** Which chamber it can be, the best candidate first: the members of rodt_identification. */
export class Identification {
    /** One sentence: what to look at, and what it would show. */
    get advice() {
        return textAt(c.rodt_observation_text(observations.numberOf(this.nextObservation)));
    }

    /** The report as JSON, with the names of `rodtravel identify --json`. */
    get json() {
        return identificationJson(this, 0);
    }
}

/** The same with the sentences of a catalogue. */
export function identificationJson(found, catalogue) {
    const [rules, day] = partsOf(found, "identification");
    return scratch(() => {
        const [at, on] = [putKept(found, "identification", "rodt_identification"), putDate(day, "day")];
        return textFrom(
            written((...room) => c.rodt_identification_json_format(at, rulesPointer(rules), on, catalogue, 0, ...room)),
        );
    });
}

function putClues({ stamp, ...clues }) {
    const at = fill(CLUES, CLUES.take(), clues);
    if (isGiven(stamp)) {
        const from = putChamber(stamp, "stamp");
        memory().copyWithin(at + CLUES.offset("stamp"), from, from + CHAMBER.size);
    }
    return at;
}

/**
 * Lists the chambers that can be the one that was seen. `stamp` is the stamped text or a chamber; `family`, `port` and
 * `tag` are words; `ratedStroke` the marked one, `diameter` the outside diameter by tape, read to `diameterDivision`
 * (1/8 in is taken). `rules` and `day` say whose limits are given. Throws a RodtravelError if there is no clue at all.
 */
export function identify(options) {
    const { rules: named, day, ...clues } = onlyKnown(options, [...clueNames, "rules", "day"], "identify");
    const rules = ruleSet(named);
    return scratch(() => {
        const [at, on, out] = [putClues(clues), putDate(day, "day"), IDENTIFICATION.take()];
        checked((error) => c.rodt_clues_identify(at, rulesPointer(rules), on, out, error));
        return keptRecord(new Identification(), IDENTIFICATION, out, rules, day);
    });
}
