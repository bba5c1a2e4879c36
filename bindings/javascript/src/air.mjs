// SPDX-License-Identifier: Apache-2.0
// Air-system checks, and the reservoirs.
import { exactFrom, rowsOf } from "./chambers.mjs";
import { AIR_COUNT_MAX } from "./constants.mjs";
import { layout } from "./describe.mjs";
import { check, checked, textFrom } from "./error.mjs";
import { numberText } from "./fraction.mjs";
import { keptRecord, putKept } from "./kept.mjs";
import { c, scratch, setUint32, take, textAt, textPointer, uint32At, written } from "./memory.mjs";
import { rulesPointer, ruleSet } from "./rules.mjs";
import { fill, isGiven, numberOfWord, onlyKnown, putExact, putPressure, recorded, wholeNumber } from "./values.mjs";

const [FORM, AIR_FINDING, STYLE, VOLUME_ROW] = [
    "rodt_air_form",
    "rodt_air_finding",
    "rodt_style",
    "rodt_volume_row",
].map(layout);
const checkTexts = FORM.members.filter((member) => member.kind === "text-pointer").map((member) => member.name);
const COUNTS = ["towedUnits", "applications"];

/** The judgement of one air check, made by judgeAir: the members of rodt_air_finding, and what they say. */
export class AirFinding {
    /** The judgement as a sentence for a form. */
    get sentence() {
        return said(this, c.rodt_air_finding_format);
    }

    /** What would have been defective; "" without a row. */
    get edge() {
        return said(this, c.rodt_air_finding_edge_format);
    }

    /** What one says aloud after the check. */
    get spoken() {
        return said(this, c.rodt_air_finding_spoken_format);
    }

    /** What it does not settle, such as a printed kPa figure that is rounded; "" = nothing. */
    get note() {
        return said(this, c.rodt_air_finding_note_format);
    }

    /** The report as JSON, with the names of `rodtravel air --json`. */
    get json() {
        return said(this, (at, ...room) => c.rodt_air_finding_json_format(at, 0, 0, ...room));
    }

    toString() {
        return this.sentence;
    }
}

function said(finding, format) {
    return scratch(() => {
        const at = putKept(finding, "finding", "rodt_air_finding");
        return textFrom(written((...room) => format(at, ...room)));
    });
}

const WORDS = ["check", "vehicle", "span"];

function checkText(value, name, point) {
    if (typeof value === "string") return value;
    if (name === "answer") return recorded(value, name, ["no", "yes"]);
    if (WORDS.includes(name)) throw new TypeError(`${name} is text`);
    if (COUNTS.includes(name)) return String(wholeNumber(value, name, 0, AIR_COUNT_MAX));
    return numberText(value, name, point);
}

function putCheck(given, { unit: pressureUnit = "psi", decimalComma = false, dateOrder = "unknown" }) {
    const at = FORM.take();
    fill(STYLE, at + FORM.offset("style"), { pressureUnit, decimalComma });
    setUint32(at + FORM.offset("date_order"), numberOfWord("rodt_date_order", dateOrder, "dateOrder"));
    for (const { kind, name, offset } of FORM.members) {
        if (kind === "text-pointer" && isGiven(given[name])) {
            setUint32(at + offset, textPointer(checkText(given[name], name, decimalComma ? "," : ".")));
        }
    }
    return at;
}

const STYLE_OPTIONS = ["unit", "decimalComma", "dateOrder", "rules"];

/**
 * Judges one check of the air system by the published edge of `rules`. `check` is its word, "warning", "loss-applied".
 * Pressures (pressure, before, after, cutOut, cutIn) are exact numbers or text in `unit`, psi, or text with a unit;
 * seconds is a number or text, "2:05"; volumes are in3; `answer` is true or false for checks of yes and no, and false
 * for what was waited for and never came; `built` is a day or a year.
 *
 * A fact that is missing makes the finding undetermined, never an error.
 */
export function judgeAir(check, options = {}) {
    const {
        rules: named,
        unit,
        decimalComma,
        dateOrder,
        ...given
    } = onlyKnown(options, [...checkTexts.filter((name) => name !== "check"), ...STYLE_OPTIONS], "judgeAir");
    const rules = ruleSet(named);
    return scratch(() => {
        const [form, out] = [putCheck({ check, ...given }, { unit, decimalComma, dateOrder }), AIR_FINDING.take()];
        checked((error) => c.rodt_air_form_judge(form, rulesPointer(rules), out, error));
        return keptRecord(new AirFinding(), AIR_FINDING, out, rules);
    });
}

/** What a check is called in a sentence: "low-pressure warning". */
export function checkTitle(check) {
    return textAt(c.rodt_air_check_title(numberOfWord("rodt_air_check", check, "check")));
}

/** Every row of Table V of 49 CFR 571.121: the rated volumes of chambers. */
export function volumeRows() {
    return rowsOf(VOLUME_ROW, c.rodt_volume_row_count(), c.rodt_volume_row_at);
}

/** Required volume of the reservoirs in in3 for chambers of so many in3 in all: x 12, or x 8 for a trailer. */
export function requiredVolume(chambers, options = {}) {
    const { trailer = false } = onlyKnown(options, ["trailer"], "requiredVolume");
    return exactFrom(
        (out) => c.rodt_reservoir_required_volume(putExact(chambers, "chambers"), trailer ? 1 : 0, out),
        "chambers",
    );
}

/** Time allowed for 85 to 100 psi, in seconds: 25 s x actual / required volume. */
export function buildUpSeconds(actual, required) {
    return exactFrom(
        (out) => c.rodt_reservoir_build_up_seconds(putExact(actual, "actual"), putExact(required, "required"), out),
        "volumes",
    );
}

/** An estimate, no figure of law: psi in the reservoirs after one full application with the engine off. */
export function estimateApplication(pressure, reservoir, chambers, fillPart = 1) {
    return exactFrom(
        (out) =>
            c.rodt_reservoir_estimate_application(
                putPressure(pressure, "pressure"),
                putExact(reservoir, "reservoir"),
                putExact(chambers, "chambers"),
                putExact(fillPart, "fill"),
                out,
            ),
        "estimate",
    );
}

/** An estimate: how many full applications keep the reservoirs at `floor` psi or above, starting at `pressure`. */
export function estimateApplications(pressure, floor, reservoir, chambers, fillPart = 1) {
    return scratch(() => {
        const out = take(4);
        check(
            c.rodt_reservoir_estimate_applications(
                putPressure(pressure, "pressure"),
                putPressure(floor, "floor"),
                putExact(reservoir, "reservoir"),
                putExact(chambers, "chambers"),
                putExact(fillPart, "fill"),
                out,
            ),
            0,
            "estimate",
        );
        return uint32At(out);
    });
}
