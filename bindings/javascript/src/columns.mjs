// SPDX-License-Identifier: Apache-2.0
// Many wheel ends at once: columns in, columns out, judged in the library's memory some thousand rows at a time.
import { putChamber } from "./chambers.mjs";
import {
    COLUMN_NO_LIMIT,
    COLUMN_NO_STROKE,
    COLUMN_PARTS_PER_INCH,
    COLUMN_PER_64TH,
    COLUMN_PER_INCH,
    COLUMN_PER_MM,
    COLUMN_PER_PSI,
} from "./constants.mjs";
import { enumeration, layout, snake } from "./describe.mjs";
import { checked } from "./error.mjs";
import { putForm } from "./findings.mjs";
import { Fraction } from "./fraction.mjs";
import { c, copyOf, put, scratch, setUint32, take, uint32At } from "./memory.mjs";
import { rulesPointer, ruleSet } from "./rules.mjs";
import { checkValid, chooseColumns, putBits, putCells, readingFields, rowsOfColumn } from "./tables.mjs";
import { fill, isGiven, onlyKnown, recorded } from "./values.mjs";

const [OUT, IN, BITS, CELLS, COLUMNS, READING] = [
    "rodt_column_out",
    "rodt_column_in",
    "rodt_column_bits",
    "rodt_text_cells",
    "rodt_text_columns",
    "rodt_reading",
].map(layout);
const verdicts = enumeration("rodt_verdict");
const reasonSets = enumeration("rodt_reason");
const flagSets = enumeration("rodt_column_flag");
const layoutsOfText = enumeration("rodt_text_layout");

/** A multiple of 8, so that a chunk of a bitmap begins with a byte. */
const CHUNK_ROWS = 1 << 15;

/** Columns of lengths are whole numbers of 5 nm, of pressures thousandths of a psi. */
export const UNITS_PER_INCH = COLUMN_PER_INCH;
export const UNITS_PER_64TH = COLUMN_PER_64TH;
export const UNITS_PER_MM = COLUMN_PER_MM;
export const UNITS_PER_PSI = COLUMN_PER_PSI;
/** A BigInt: parts are finer, for every decimal of up to nine digits is a whole number of them. */
export const PARTS_PER_INCH = COLUMN_PARTS_PER_INCH;
export const NO_STROKE = COLUMN_NO_STROKE;
export const NO_LIMIT = COLUMN_NO_LIMIT;

const ANSWERS = {
    stroke: Int32Array,
    verdict: Uint8Array,
    reasons: BigUint64Array,
    flags: Uint8Array,
    limit: Int32Array,
    strokeParts: BigInt64Array,
};
const inInches = (count, perInch) => (count < 0 ? null : new Fraction(count, perInch));

/**
 * The answers for columns, a typed array each: `stroke` and `limit` in units of 5 nm (NO_STROKE, NO_LIMIT), `verdict`
 * numbers, `reasons` and `flags` sets of bits. A stroke that is no whole number of units, such as one of six decimals,
 * is NO_STROKE there; `strokeParts` has it in PARTS_PER_INCH (-1n = none). `unread` lists the columns of a table that
 * probably mean a field but are not read, or whose first cell is no such value: { heading, field, why }.
 */
export class Answers {
    constructor(rows, unread = Object.freeze([])) {
        this.length = rows;
        for (const [name, Kind] of Object.entries(ANSWERS)) this[name] = new Kind(rows);
        this.unread = unread;
        Object.freeze(this);
    }

    /** One row as an object: verdict, reasons and flags as words, appliedStroke, limit and margin in inches. */
    at(row) {
        if (!Number.isSafeInteger(row) || row < 0 || row >= this.length) throw new RangeError(`there is no row ${row}`);
        const stroke = inInches(this.strokeParts[row], PARTS_PER_INCH);
        const limit = inInches(this.limit[row], UNITS_PER_INCH);
        return Object.freeze({
            verdict: verdicts.wordOf(this.verdict[row]),
            reasons: reasonSets.wordsOf(this.reasons[row]),
            flags: flagSets.wordsOf(BigInt(this.flags[row])),
            appliedStroke: stroke,
            limit,
            margin: stroke === null || limit === null ? null : limit.subtract(stroke),
        });
    }

    *[Symbol.iterator]() {
        for (let row = 0; row < this.length; row++) yield this.at(row);
    }

    /** How many rows have each verdict. */
    counts() {
        const counts = Object.fromEntries([...verdicts.word.values()].map((word) => [word, 0]));
        for (const number of this.verdict) counts[verdicts.wordOf(number)]++;
        return counts;
    }
}

function putOut(rows) {
    const [at, columns] = [OUT.take(), {}];
    for (const [name, Kind] of Object.entries(ANSWERS)) {
        columns[name] = take(Kind.BYTES_PER_ELEMENT * Math.max(rows, 1));
        setUint32(at + OUT.offset(snake(name)), columns[name]);
    }
    return { at, columns };
}

function takeAnswers(answers, { columns }, from, rows) {
    for (const [name, Kind] of Object.entries(ANSWERS)) {
        answers[name].set(new Kind(copyOf(columns[name], Kind.BYTES_PER_ELEMENT * rows).buffer), from);
    }
}

/** Judges rows chunk by chunk: `judgeChunk(from, to, out)` for each. */
function judgeChunks(answers, judgeChunk) {
    for (let from = 0; from < answers.length || from === 0; from += CHUNK_ROWS) {
        const to = Math.min(from + CHUNK_ROWS, answers.length);
        scratch(() => {
            const out = putOut(to - from);
            judgeChunk(from, to, out.at);
            takeAnswers(answers, out, from, to - from);
        });
    }
    return answers;
}

function rowsOfAll(columns, count) {
    const counts = new Map([...columns].map(([name, column]) => [name, count(column, name)]));
    const [rows = 0] = counts.values();
    for (const [name, other] of counts) {
        if (other !== rows) throw new RangeError(`the column ${name} has ${other} rows, others have ${rows}`);
    }
    return rows;
}

// --- Texts --------------------------------------------------------------------------------------------------

const TABLE_OPTIONS = ["columns", "rules", "defaultUnit", "decimalComma", "dateOrder", "defaultDate", "defaultPsi"];

function putTextColumns(columns, from, to, point) {
    const at = COLUMNS.take();
    for (const [name, column] of columns) {
        const place = at + COLUMNS.offset("field") + readingFields.indexOf(name) * CELLS.size;
        const { cells, bytes, valid } = putCells(column, name, from, to, point);
        setUint32(place + CELLS.offset("layout"), layoutsOfText.numberOf("offsets32"));
        setUint32(place + CELLS.offset("cells"), cells);
        setUint32(place + CELLS.offset("bytes"), bytes);
        setUint32(place + CELLS.offset("valid") + BITS.offset("bits"), valid);
    }
    return at;
}

/** Frees what a call made in the library, however it ends. */
function withPlan(make, free, work) {
    return scratch(() => {
        const out = take(4);
        checked((error) => make(out, error));
        try {
            return work(uint32At(out));
        } finally {
            free(uint32At(out));
        }
    });
}

/**
 * Judges every row of columns of texts as judgeRow would, to the last reason, and gives Answers. `table` is an object
 * or a Map of columns by heading, found as the command finds them: capitals, blanks, "_", "-" and camelCase make no
 * difference, "Pressure" is psi. A column is a list of text, exact numbers or null, or { offsets, data, valid }: an
 * Int32Array of where each text begins and one more, a Uint8Array of UTF-8, and a bitmap, as Arrow has them.
 *
 * Options: `columns`, headings by field, { date: "Day", unit: null }, null = none; `rules`; `defaultUnit`,
 * `decimalComma` and `dateOrder` say how cells are written; `defaultDate` and `defaultPsi` are for rows without one.
 */
export function judgeColumns(table, options = {}) {
    const {
        columns: named = {},
        rules: of,
        defaultUnit: unit = "in",
        defaultPsi: psi,
        decimalComma = false,
        ...style
    } = onlyKnown(options, TABLE_OPTIONS, "judgeColumns");
    const rules = ruleSet(of);
    const { columns, unread } = chooseColumns(table, named, unit);
    const answers = new Answers(rowsOfAll(columns, rowsOfColumn), unread);
    const point = decimalComma ? "," : ".";
    return scratch(() => {
        const form = putForm({ psi }, { ...style, unit, decimalComma });
        const make = (out, error) => c.rodt_text_plan_new(rulesPointer(rules), form, out, error);
        return withPlan(make, c.rodt_text_plan_free, (plan) =>
            judgeChunks(answers, (from, to, out) => {
                const cells = putTextColumns(columns, from, to, point);
                checked((error) => c.rodt_text_plan_judge(plan, cells, to - from, out, error), null, true);
            }),
        );
    });
}

// --- Numbers ------------------------------------------------------------------------------------------------

const freedPlans = new FinalizationRegistry((at) => c.rodt_column_plan_free(at));
const plans = new WeakMap();
const NUMBER_COLUMNS = ["released", "applied", "chamber", "psi", "date"];
const WIDE = { released: "released64", applied: "applied64" };
const PLAN_OPTIONS = ["unit", "date", "psi", "psiAfter", "engineRunning", "springBrakeApplied", "drum"];

/** Where a column of numbers goes, and its cells; throws a TypeError for another type. */
function memberOf(name, values) {
    if (name === "chamber" ? values instanceof Uint8Array : values instanceof Int32Array) return name;
    if (WIDE[name] !== undefined && values instanceof BigInt64Array) return WIDE[name];
    throw new TypeError(
        `${name} is ${name === "chamber" ? "a Uint8Array of codes" : "an Int32Array"} of the plan's units`,
    );
}

const valuesOf = (column) => (ArrayBuffer.isView(column) ? column : column?.values);

function rowsOfNumbers(column, name) {
    const values = valuesOf(column);
    memberOf(name, values);
    if (isGiven(column.valid)) checkValid(column.valid, values.length, name);
    return values.length;
}

function putNumberColumns(columns, from, to) {
    const at = IN.take();
    for (const [name, column] of columns) {
        const part = valuesOf(column).subarray(from, to);
        const cells = put(new Uint8Array(part.buffer, part.byteOffset, part.byteLength));
        setUint32(at + IN.offset(memberOf(name, valuesOf(column))), cells);
        setUint32(at + IN.offset(`${name}_valid`) + BITS.offset("bits"), putBits(column.valid, from, to));
    }
    return at;
}

/**
 * Judges columns of numbers. Readings are an Int32Array or BigInt64Array of whole numbers of 5 nm: UNITS_PER_INCH,
 * UNITS_PER_64TH and UNITS_PER_MM of them; pressures an Int32Array of thousandths of a psi, dates one of days since
 * 1970-01-01. The options hold for rows without a value of their own. Its memory is given back when nothing has it any
 * more, or by free().
 */
export class Plan {
    constructor(rules = undefined, options = {}) {
        const {
            date: day,
            psi: pressure,
            psiAfter: pressureAfter,
            engineRunning,
            springBrakeApplied,
            ...rest
        } = onlyKnown(options, PLAN_OPTIONS, "Plan");
        const shared = {
            ...rest,
            day,
            pressure,
            pressureAfter,
            engineRunning: recorded(engineRunning, "engineRunning", ["no", "yes"]),
            springBrakeApplied: recorded(springBrakeApplied, "springBrakeApplied", ["no", "yes"]),
        };
        this.rules = ruleSet(rules);
        scratch(() => {
            const [common, out] = [fill(READING, READING.take(), shared), take(4)];
            checked((error) => c.rodt_column_plan_new(rulesPointer(this.rules), common, out, error));
            plans.set(this, uint32At(out));
            freedPlans.register(this, uint32At(out), this);
        });
        Object.freeze(this);
    }

    /** Adds a chamber and gives its code, 2 to 255; 0 is a missing chamber, 1 an unreadable one. */
    add(chamber) {
        return scratch(() => {
            const code = take(4);
            checked(
                (error) => c.rodt_column_plan_add(pointerOfPlan(this), putChamber(chamber), code, error),
                "chamber",
            );
            return uint32At(code);
        });
    }

    /**
     * Judges every row of { released, applied, chamber, psi, date }; chamber has codes of this plan, a Uint8Array. A
     * column is a typed array, or { values, valid } with a bitmap of the cells that are there.
     */
    judge(given) {
        const columns = Object.entries(onlyKnown(given, NUMBER_COLUMNS, "Plan.judge")).filter(([, column]) =>
            isGiven(column),
        );
        const plan = pointerOfPlan(this);
        return judgeChunks(new Answers(rowsOfAll(columns, rowsOfNumbers)), (from, to, out) => {
            const all = putNumberColumns(columns, from, to);
            checked((error) => c.rodt_column_plan_judge(plan, all, to - from, out, error));
        });
    }

    /** Gives its memory back now; the plan cannot be used any more. */
    free() {
        const at = plans.get(this);
        plans.delete(this);
        freedPlans.unregister(this);
        if (at !== undefined) c.rodt_column_plan_free(at);
    }
}

function pointerOfPlan(plan) {
    const at = plans.get(plan);
    if (at === undefined) throw new TypeError("this Plan was freed");
    return at;
}
