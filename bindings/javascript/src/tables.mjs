// SPDX-License-Identifier: Apache-2.0
// Columns of texts, and which column of a table is which field: by the library's rule for headings.
import { FIELD_NONE, READING_FIELDS } from "./constants.mjs";
import { camel, enumeration } from "./describe.mjs";
import { cellText } from "./findings.mjs";
import { c, put, putText, scratch, textAt, uint32At, take, writeText } from "./memory.mjs";
import { isGiven } from "./values.mjs";

const NEEDED = ["chamber", "released", "applied"];
const LENGTHS = ["released", "applied", "ratedStroke", "markedLimit", "division"];
const units = enumeration("rodt_unit");

/** The fields of a reading in the order of their numbers. */
export const readingFields = Array.from({ length: READING_FIELDS }, (_, i) => camel(textAt(c.rodt_field_name(i))));

/** A field of a reading by a function of C that takes a text and its size; undefined = none. */
function fieldBy(call, heading) {
    return scratch(() => {
        const { at, size } = putText(heading);
        return readingFields[call(at, size)];
    });
}

const fieldOfHeading = (heading) =>
    fieldBy((at, size) => {
        const out = take(4);
        return c.rodt_field_find_n(at, size, out) === 0 ? uint32At(out) : FIELD_NONE;
    }, heading);

const fieldMeant = (heading) => fieldBy(c.rodt_field_meant, heading);

// --- Cells --------------------------------------------------------------------------------------------------

const isBuffers = (column) => isGiven(column?.offsets) && isGiven(column.data);

/** How many rows a column has; throws a TypeError for what is none. */
export function rowsOfColumn(column, name) {
    if (isBuffers(column)) {
        if (!(column.offsets instanceof Int32Array) || !(column.data instanceof Uint8Array)) {
            throw new TypeError(`${name}: offsets are an Int32Array, data a Uint8Array`);
        }
        return checkedBuffers(column, name);
    }
    if (typeof column === "string" || !Number.isSafeInteger(column?.length)) {
        throw new TypeError(`${name} is a column: a list of text or null, or { offsets, data, valid }`);
    }
    return column.length;
}

/** Offsets that lead out of the data would be read there. */
function checkedBuffers({ offsets, data, valid }, name) {
    const rows = Math.max(offsets.length - 1, 0);
    for (let i = 0; i < rows; i++) {
        if (offsets[i] < 0 || offsets[i + 1] < offsets[i])
            throw new RangeError(`${name}: offset ${i} is below the one before`);
    }
    if (rows > 0 && offsets[rows] > data.length) throw new RangeError(`${name}: the data end before the last text`);
    if (isGiven(valid)) checkValid(valid, rows, name);
    return rows;
}

/** A bitmap of the cells that are there, as Arrow has it: bit i % 8 of byte i / 8. */
export function checkValid(valid, rows, name) {
    if (!(valid instanceof Uint8Array)) throw new TypeError(`${name}: valid is a Uint8Array, a bit for each cell`);
    if (8 * valid.length < rows) throw new RangeError(`${name}: valid has fewer bits than there are rows`);
}

/** Bits of rows from a row whose number is a multiple of 8; 0 where every cell is there. */
export const putBits = (valid, from, to) => (isGiven(valid) ? put(valid.subarray(from >> 3, (to + 7) >> 3)) : 0);

function putBuffers({ offsets, data, valid }, from, to) {
    const first = offsets[from];
    const cells = put(new Uint8Array(offsets.slice(from, to + 1).map((offset) => offset - first).buffer));
    return { cells, bytes: put(data.subarray(first, offsets[to])), valid: putBits(valid, from, to) };
}

function textsOf(column, name, from, to, point) {
    const texts = [];
    for (let row = from; row < to; row++) {
        const cell = column[row];
        // A table takes the sizes of chambers for numbers.
        texts.push(
            name === "chamber" && Number.isSafeInteger(cell)
                ? String(cell)
                : isGiven(cell)
                  ? cellText(cell, name, point)
                  : "",
        );
    }
    return texts;
}

/** Cells of rows in memory: { cells, bytes, valid }. What is missing is a text of nothing, which means the same. */
export function putCells(column, name, from, to, point) {
    if (isBuffers(column)) return putBuffers(column, from, to);
    const texts = textsOf(column, name, from, to, point);
    const all = texts.join("");
    const bytes = put(new Uint8Array(3 * all.length));
    const offsets = new Int32Array(texts.length + 1);
    // Where every character is one byte, all cells are written at once.
    const isPlain = writeText(all, bytes) === all.length;
    texts.forEach((text, i) => {
        offsets[i + 1] = offsets[i] + (isPlain ? text.length : writeText(text, bytes + offsets[i]));
    });
    return { cells: put(new Uint8Array(offsets.buffer)), bytes, valid: 0 };
}

function firstText(column, name) {
    const count = isBuffers(column) ? rowsOfColumn(column, name) : column.length;
    for (let row = 0; row < count; row++) {
        const cell = isBuffers(column) ? bufferText(column, row) : column[row];
        if (isGiven(cell) && String(cell).trim() !== "") return cell;
    }
    return "";
}

const bufferText = ({ offsets, data }, row) => new TextDecoder().decode(data.subarray(offsets[row], offsets[row + 1]));

// --- Tables -------------------------------------------------------------------------------------------------

class Choice {
    constructor(table, named) {
        this.entries = table instanceof Map ? [...table] : Object.entries(table);
        this.named = named;
        this.columns = new Map();
        this.headings = new Map();
        this.unread = [];
    }

    choose(field, [heading, column]) {
        if (this.columns.has(field)) {
            throw new TypeError(
                `the columns "${this.headings.get(field)}" and "${heading}" both mean ${field}; say which ` +
                    `one: columns: { ${field}: "${heading}" }`,
            );
        }
        this.columns.set(field, column);
        this.headings.set(field, heading);
    }

    /** Columns that the caller named, then those whose headings name a field. */
    find() {
        for (const [field, heading] of Object.entries(this.named))
            if (heading !== null) this.choose(field, this.entryOf(heading));
        const chosen = [...this.headings.values()];
        const others = this.entries.filter(([heading]) => !chosen.includes(heading));
        for (const entry of others) {
            const field = fieldOfHeading(entry[0]);
            if (field !== undefined && this.named[field] === undefined) this.choose(field, entry);
        }
        for (const [heading] of others) this.doubt(heading, fieldMeant(heading));
        return this;
    }

    entryOf(heading) {
        const found = this.entries.find(([name]) => name === heading);
        if (found === undefined) throw new TypeError(`the table has no column "${heading}"`);
        return found;
    }

    doubt(heading, field) {
        if (field !== undefined && !this.columns.has(field) && this.named[field] === undefined) {
            this.unread.push(Object.freeze({ heading, field, why: "its heading is none that is read" }));
        }
    }

    /** Fleets call a vehicle a unit, and an engine can have a name: what the first cell shows. */
    look() {
        for (const [field, column] of [...this.columns]) {
            const [heading, first] = [this.headings.get(field), firstText(column, field)];
            const shows = (call) =>
                scratch(() => {
                    const { at, size } = putText(String(first));
                    return call(at, size) !== 0;
                });
            if (
                this.named[field] === undefined &&
                field === "unit" &&
                (typeof first !== "string" || shows(c.rodt_unit_is_vehicle))
            ) {
                this.columns.delete(field);
                this.unread.push(Object.freeze({ heading, field, why: "it names vehicles" }));
            } else if (!shows((at, size) => c.rodt_field_accepts(readingFields.indexOf(field), at, size))) {
                this.unread.push(Object.freeze({ heading, field, why: `"${first}" cannot be read so` }));
            }
        }
        return this;
    }

    /** A heading that names another unit than bare numbers are read in must not be read in that. */
    checkUnits(unit) {
        if (this.columns.has("unit")) return;
        for (const field of LENGTHS) {
            const heading = this.headings.get(field) ?? "";
            for (const [number, word] of units.word) {
                const names = scratch(() => {
                    const { at, size } = putText(heading);
                    return c.rodt_heading_names_unit(at, size, number) !== 0;
                });
                if (word !== unit && names) {
                    throw new TypeError(
                        `the heading "${heading}" names ${word}, but bare numbers are read in ${unit}; say ` +
                            `defaultUnit: "${word}", or rename it`,
                    );
                }
            }
        }
    }
}

/** The columns of a table by field, and what is doubtful: { columns, unread }. `named` has headings by field. */
export function chooseColumns(table, named, unit) {
    if (table === null || typeof table !== "object") throw new TypeError("a table is an object of columns by heading");
    for (const field of Object.keys(named)) {
        if (!readingFields.includes(field))
            throw new TypeError(`${field} is no field; those are ${readingFields.join(", ")}`);
    }
    const choice = new Choice(table, named).find().look();
    choice.checkUnits(unit);
    for (const field of NEEDED) {
        if (!choice.columns.has(field)) throw new TypeError(`a column ${field} is needed`);
    }
    return { columns: choice.columns, unread: Object.freeze(choice.unread) };
}
