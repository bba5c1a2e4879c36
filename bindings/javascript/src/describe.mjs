// SPDX-License-Identifier: Apache-2.0
// Structs of C as objects, by the library's description of itself (describe.h): where a member is and what it holds is
// asked of it. Not even the layout of a row of the description is known here: it is read as texts first.
import { Fraction } from "./fraction.mjs";
import { c, isConstant, memory, scratch, take, textAt, textPointer, uint32At, view, written } from "./memory.mjs";

/** "stroke_class" is strokeClass here. */
export const camel = (name) => name.replace(/_+([a-z0-9])/g, (_, letter) => letter.toUpperCase());
/** And the other way. */
export const snake = (name) => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

const recordOf = (name) => scratch(() => c.rodt_record_find(textPointer(name)));

function textOf(record, value, path) {
    return scratch(() => {
        const place = textPointer(path);
        return written((...room) => c.rodt_record_text_format(record, value, place, ...room))[1];
    });
}

function offsetsOf(record) {
    const rows = recordOf("rodt_member");
    const offsets = {};
    for (let i = 0; i < c.rodt_member_count(record); i++) {
        const row = c.rodt_member_at(record, i);
        offsets[textOf(rows, row, "name")] = Number(textOf(rows, row, "offset"));
    }
    return offsets;
}

const MEMBER = offsetsOf(recordOf("rodt_member"));
const ENUMERATOR = offsetsOf(recordOf("rodt_enumerator"));
const RATIO = offsetsOf(recordOf("rodt_ratio"));
const DATE = offsetsOf(recordOf("rodt_date"));

// --- Enumerations -------------------------------------------------------------------------------------------

class Enumeration {
    constructor(at) {
        this.at = at;
        this.name = textAt(c.rodt_enumeration_name(at));
        this.isBits = c.rodt_enumeration_is_bits(at) !== 0;
        this.word = new Map();
        this.text = new Map();
        this.sets = new Map();
        for (let i = 0; i < c.rodt_enumerator_count(at); i++) this.add(c.rodt_enumerator_at(at, i));
    }

    add(row) {
        const number = Number(view().getBigInt64(row + ENUMERATOR.number, true));
        this.word.set(number, textAt(uint32At(row + ENUMERATOR.word)));
        this.text.set(number, textAt(uint32At(row + ENUMERATOR.text)));
    }

    /** Of a number; the number itself if this version does not know it. */
    wordOf(number) {
        return this.word.get(number) ?? number;
    }

    /** The words of a set. */
    wordsOf(set) {
        let words = this.sets.get(set);
        if (words === undefined) {
            const has = (number) => set & (this.isBits ? BigInt(number) : 1n << BigInt(number));
            words = Object.freeze([...this.word].filter(([number]) => has(number)).map(([, word]) => word));
            this.sets.set(set, words);
        }
        return words;
    }

    /** The number of a word, capitals and blanks around it or not; undefined = there is none. */
    numberOf(word) {
        const row = scratch(() => c.rodt_enumerator_find(this.at, textPointer(word)));
        return row === 0 ? undefined : Number(view().getBigInt64(row + ENUMERATOR.number, true));
    }
}

const enumerations = new Map();

function enumerationAt(at) {
    let known = enumerations.get(at);
    if (known === undefined) enumerations.set(at, (known = new Enumeration(at)));
    return known;
}

/** The enumeration of a name, "rodt_verdict". */
export const enumeration = (name) => enumerationAt(scratch(() => c.rodt_enumeration_find(textPointer(name))));

/** Every enumeration. */
export function allEnumerations() {
    return Array.from({ length: c.rodt_enumeration_count() }, (_, i) => enumerationAt(c.rodt_enumeration_at(i)));
}

// --- Values -------------------------------------------------------------------------------------------------

/** An exact number; null = not given. */
export function exactAt(at) {
    const den = view().getBigInt64(at + RATIO.den, true);
    return den === 0n ? null : new Fraction(view().getBigInt64(at + RATIO.num, true), den);
}

/** A day as "2021-10-14", a year alone as "2021"; null = not given. */
export function dateAt(at) {
    const year = view().getInt16(at + DATE.year, true);
    if (year === 0) return null;
    const parts = [view().getInt8(at + DATE.month), view().getInt8(at + DATE.day)].filter((part) => part !== 0);
    return [year, ...parts.map((part) => String(part).padStart(2, "0"))].join("-");
}

const kinds = enumeration("rodt_member_kind");
const rulesId = (at) => (at === 0 ? null : textAt(c.rodt_rules_id(at)));

function integerAt(at, size, signed) {
    const bits = 8 * size;
    if (bits === 64) return Number(signed ? view().getBigInt64(at, true) : view().getBigUint64(at, true));
    return view()[`get${signed ? "Int" : "Uint"}${bits}`](at, true);
}

function positionAt(at) {
    const [status, text] = written((...room) => c.rodt_position_format(at, ...room));
    return status === 0 ? text : null;
}

/** What reads one element of a kind. Kinds that are not here are memory of the program, and no values. */
const READERS = {
    length: () => exactAt,
    pressure: () => exactAt,
    ratio: () => exactAt,
    date: () => dateAt,
    position: () => positionAt,
    enumerator:
        ({ size, of }) =>
        (at) =>
            of.wordOf(integerAt(at, size, false)),
    set:
        ({ size, of }) =>
        (at) =>
            of.wordsOf(size === 8 ? view().getBigUint64(at, true) : BigInt(uint32At(at))),
    boolean: () => (at) => memory()[at] !== 0,
    integer:
        ({ size }) =>
        (at) =>
            integerAt(at, size, true),
    unsigned:
        ({ size }) =>
        (at) =>
            integerAt(at, size, false),
    index: () => (at) => (uint32At(at) === 0xffffffff ? null : uint32At(at)),
    text: () => (at) => textAt(at) || null,
    "text-pointer": () => (at) => textAt(uint32At(at)) || null,
    record:
        ({ record }) =>
        (at) =>
            layoutAt(record).read(at),
    "record-pointer":
        ({ record }) =>
        (at) =>
            layoutAt(record).readConstant(uint32At(at)),
    rules: () => (at) => rulesId(uint32At(at)),
};

const MM_PER_INCH = new Fraction(127n, 5n);

class Member {
    constructor(row) {
        const number = (name) => uint32At(row + MEMBER[name]);
        this.field = textAt(number("name"));
        this.name = camel(this.field);
        this.unit = textAt(number("unit"));
        this.used = textAt(number("used"));
        this.kind = kinds.wordOf(number("kind"));
        this.record = number("record");
        this.of = number("enumeration") === 0 ? null : enumerationAt(number("enumeration"));
        for (const name of ["offset", "size", "count"]) this[name] = number(name);
        this.readOne = READERS[this.kind]?.(this);
        if (this.kind === "length" && this.name.endsWith("Mm")) this.printInMm();
    }

    /** Millimetres that a source prints are kept as a length. */
    printInMm() {
        this.unit = "mm";
        this.readOne = (at) => exactAt(at)?.multiply(MM_PER_INCH) ?? null;
    }

    /** The value in the struct at `at`: of an array those in use, or those up to the last one that is given. */
    read(at, layout) {
        if (this.count === 1) return this.readOne(at + this.offset);
        const count = this.used === null ? this.count : integerAt(at + layout.offset(this.used), 4, false);
        const all = Array.from({ length: count }, (_, i) => this.readOne(at + this.offset + i * this.size));
        return Object.freeze(all.filter((value) => value !== null));
    }
}

class Layout {
    constructor(record) {
        this.record = record;
        this.name = textAt(c.rodt_record_name(record));
        this.size = c.rodt_record_size(record);
        this.isInput = c.rodt_record_is_input(record) !== 0;
        this.constants = new Map();
        this.members = Array.from(
            { length: c.rodt_member_count(record) },
            (_, i) => new Member(c.rodt_member_at(record, i)),
        );
        this.values = this.members.filter((member) => member.readOne !== undefined);
        this.places = new Map(this.members.map((member) => [member.field, member.offset]));
    }

    /** Where a member is, by its name in C. */
    offset(field) {
        return this.places.get(field);
    }

    /** The members by name, as an own property each. */
    readInto(made, at) {
        for (const member of this.values) made[member.name] = member.read(at, this);
        return made;
    }

    read(at) {
        return Object.freeze(this.readInto({}, at));
    }

    /** What a pointer points to; null for NULL. What never changes is read once. */
    readConstant(at) {
        if (at === 0) return null;
        if (!isConstant(at)) return this.read(at);
        let known = this.constants.get(at);
        if (known === undefined) this.constants.set(at, (known = this.read(at)));
        return known;
    }

    /** A struct of zero bytes, until the scratch ends. */
    take(count = 1) {
        return take(this.size * count);
    }
}

const layouts = new Map();

function layoutAt(record) {
    let known = layouts.get(record);
    if (known === undefined) layouts.set(record, (known = new Layout(record)));
    return known;
}

/** The layout of a record, "rodt_finding". */
export const layout = (name) => layoutAt(recordOf(name));

/** Every record. */
export function allLayouts() {
    return Array.from({ length: c.rodt_record_count() }, (_, i) => layoutAt(c.rodt_record_at(i)));
}
