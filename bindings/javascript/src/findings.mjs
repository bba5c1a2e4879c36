// SPDX-License-Identifier: Apache-2.0
// The judgement of one wheel end.
import { readChamber, writeChamber } from "./chambers.mjs";
import { enumeration, layout } from "./describe.mjs";
import { check, checked, errorAt, textFrom } from "./error.mjs";
import { numberText } from "./fraction.mjs";
import { keptRecord, putKept } from "./kept.mjs";
import { c, scratch, setUint32, take, textPointer, uint32At, written } from "./memory.mjs";
import { rulesPointer, ruleSet } from "./rules.mjs";
import { fill, isGiven, numberOfWord, onlyKnown, recorded } from "./values.mjs";

const FORM = layout("rodt_form");
const STYLE = layout("rodt_style");
const ERROR = layout("rodt_error");
const FINDING = layout("rodt_finding");
const verdictDefects = enumeration("rodt_defect");
const reasons = enumeration("rodt_reason");

/** The texts of a form by name. */
export const formTexts = FORM.members.filter((member) => member.kind === "text-pointer").map((member) => member.name);
const NUMBERS = ["released", "applied", "ratedStroke", "markedLimit", "psi", "psiAfter", "division"];

/** A text as it is; an exact number as its text, where the field is one. */
export function cellText(value, name, point = ".") {
    if (typeof value === "string") return value;
    if (NUMBERS.includes(name)) return numberText(value, name, point);
    throw new TypeError(`${name} is text`);
}

/** What a chamber that is no text says, as texts: its name says its class. Marks beside it have precedence. */
function withChamber(cells) {
    if (!isGiven(cells.chamber) || typeof cells.chamber === "string") return cells;
    const { size, ratedStroke, markedLimit } = readChamber(cells.chamber);
    const chamber = size === null ? null : writeChamber(cells.chamber);
    return {
        ...cells,
        chamber,
        ratedStroke: cells.ratedStroke ?? ratedStroke,
        markedLimit: cells.markedLimit ?? markedLimit,
    };
}

/** A form of cells by name, in a style of `unit`, `decimalComma`, `dateOrder` and `defaultDate`. */
export function putForm(given, { unit = "in", decimalComma = false, dateOrder = "unknown", defaultDate }) {
    const [at, cells] = [FORM.take(), withChamber(given)];
    fill(STYLE, at + FORM.offset("style"), { unit, decimalComma });
    setUint32(at + FORM.offset("date_order"), numberOfWord("rodt_date_order", dateOrder, "dateOrder"));
    fill({ record: FORM.record, values: FORM.members.filter(({ kind }) => kind === "date") }, at, {
        defaultDay: defaultDate,
    });
    for (const { kind, name, offset } of FORM.members) {
        if (kind === "text-pointer" && isGiven(cells[name])) {
            setUint32(at + offset, textPointer(cellText(cells[name], name, decimalComma ? "," : ".")));
        }
    }
    return at;
}

/** The judgement of one wheel end, made by judge and judgeRow: the members of rodt_finding, and what they say. */
export class Finding {
    /** The comparison in one line. */
    get sentence() {
        return said(this, c.rodt_finding_format);
    }

    /** What one says aloud after the measurement. */
    get spoken() {
        return said(this, c.rodt_finding_spoken_format);
    }

    /** What the divisions of the tape prove; "" without a division. */
    get proofSentence() {
        return said(this, c.rodt_finding_proof_format);
    }

    /** One sentence for each reason, with its figures and what would change the answer. */
    get sentences() {
        const format =
            (word) =>
            (at, ...room) =>
                c.rodt_finding_reason_format(at, reasons.numberOf(word), ...room);
        return Object.freeze(this.reasons.map((word) => said(this, format(word))));
    }

    /** How it counts among the defective brakes. */
    get defect() {
        return verdictDefects.wordOf(scratch(() => c.rodt_finding_defect(putFinding(this))));
    }

    /** The report as JSON, with the names of `rodtravel stroke --json`. */
    get json() {
        return said(this, (at, ...room) => c.rodt_finding_json_format(at, 0, 0, ...room));
    }

    toString() {
        return this.sentence;
    }
}

/** The struct of a finding once more, until the scratch ends. */
export const putFinding = (finding) => putKept(finding, "finding", "rodt_finding");

function said(finding, format) {
    return scratch(() => {
        const at = putFinding(finding);
        return textFrom(written((...room) => format(at, ...room)));
    });
}

const findingAt = (at, rules) => keptRecord(new Finding(), FINDING, at, rules);

const JUDGE_OPTIONS = [
    ...formTexts.filter((name) => !["chamber", "released", "applied", "engine", "springBrake"].includes(name)),
    "engineRunning",
    "springBrakeApplied",
    "decimalComma",
    "rules",
];

/**
 * Judges one wheel end and gives a Finding. `chamber` is text such as "30L", "24/30", "bolt C", or an object as
 * readChamber gives it; `released` and `applied` are the measurements from chamber face to clevis pin. They, and the
 * options ratedStroke, markedLimit and division, are text ("4 13/16", "54 mm") or exact numbers in `unit`; psi and
 * psiAfter are psi, or text with a unit. `date` is text; without one the newest text of `rules` judges.
 *
 * What was not recorded is named among the reasons. Throws a RodtravelError with the field and column of a text that
 * cannot be read, a TypeError for binary floats.
 */
export function judge(chamber, released, applied, options = {}) {
    const {
        rules: named,
        unit = "in",
        decimalComma,
        engineRunning,
        springBrakeApplied,
        ...cells
    } = onlyKnown(options, JUDGE_OPTIONS, "judge");
    const rules = ruleSet(named);
    const conditions = {
        engine: recorded(engineRunning, "engineRunning"),
        springBrake: recorded(springBrakeApplied, "springBrakeApplied"),
    };
    return scratch(() => {
        const form = putForm({ chamber, released, applied, ...conditions, ...cells }, { unit, decimalComma });
        const out = FINDING.take();
        checked((error) => c.rodt_form_judge(form, rulesPointer(rules), out, error));
        return findingAt(out, rules);
    });
}

const STYLE_OPTIONS = ["defaultUnit", "decimalComma", "dateOrder", "defaultDate", "rules"];

/** Splits the options of a row into cells and what they are read with. */
export function splitRow(options, what) {
    const { rules, defaultUnit, decimalComma, dateOrder, defaultDate, ...cells } = onlyKnown(
        options,
        [...formTexts, ...STYLE_OPTIONS],
        what,
    );
    return { rules: ruleSet(rules), style: { unit: defaultUnit, decimalComma, dateOrder, defaultDate }, cells };
}

/**
 * Judges one row of a file as it is, and never refuses a text: gives { finding, error }. A cell that cannot be read
 * makes the finding undetermined, its reason says which, and `error` is the first such RodtravelError, not thrown.
 * `unit` is a cell of the row, `defaultUnit` that of the file; `defaultDate` is for rows without a date of their own.
 */
export function judgeRow(row) {
    const { rules, style, cells } = splitRow(row, "judgeRow");
    return scratch(() => {
        const [form, out, error] = [putForm(cells, style), FINDING.take(), ERROR.take()];
        check(c.rodt_form_judge_row(form, rulesPointer(rules), out, error), error);
        const unread = uint32At(error + ERROR.offset("status")) === 0 ? null : errorAt(error);
        return { finding: findingAt(out, rules), error: unread };
    });
}

/**
 * Everything for which judge would refuse a row: a RodtravelError for each text, so that a page can mark every field.
 */
export function rowErrors(row) {
    const { style, cells } = splitRow(row, "rowErrors");
    return scratch(() => {
        const [form, count] = [putForm(cells, style), take(4)];
        c.rodt_form_errors(form, 0, 0, count);
        const errors = ERROR.take(uint32At(count));
        check(c.rodt_form_errors(form, errors, uint32At(count), count));
        return Array.from({ length: uint32At(count) }, (_, i) => errorAt(errors + i * ERROR.size));
    });
}
