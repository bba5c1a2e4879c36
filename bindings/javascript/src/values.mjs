// SPDX-License-Identifier: Apache-2.0
// What callers give: texts, exact numbers, words and objects into structs. One reader for all: that of the library.
import { enumeration, layout } from "./describe.mjs";
import { checked, refuse } from "./error.mjs";
import { Fraction, numberText } from "./fraction.mjs";
import { c, putText, textPointer, view } from "./memory.mjs";

/** Throws a TypeError for a name that a function does not know: a slip of the keys must not drop a pressure. */
export function onlyKnown(options, known, what) {
    if (options === null || typeof options !== "object") throw new TypeError(`the options of ${what} are an object`);
    for (const name of Object.keys(options)) {
        if (!known.includes(name)) throw new TypeError(`${what} has no option ${name}; it has ${known.join(", ")}`);
    }
    return options;
}

export const isGiven = (value) => value !== undefined && value !== null;

/** Text as it is. */
export function textOnly(value, name) {
    if (typeof value !== "string") throw new TypeError(`${name} is text`);
    return value;
}

/** A yes or no as a text; null = not recorded. */
export function recorded(value, name, [no, yes] = ["off", "on"]) {
    if (!isGiven(value)) return null;
    if (typeof value !== "boolean") throw new TypeError(`${name} is true, false or null (not recorded)`);
    return value ? yes : no;
}

/** The number of a word of an enumeration. */
export function numberOfWord(of, word, name) {
    const known = enumeration(of);
    const number = known.numberOf(textOnly(word, name));
    if (number === undefined) {
        refuse("argument", `"${word}" is none of: ${[...known.word.values()].join(", ")}`, name);
    }
    return number;
}

/** A whole number of a range. */
export function wholeNumber(value, name, least, most) {
    if (!Number.isSafeInteger(value)) throw new TypeError(`${name} is a whole number`);
    if (value < least || value > most) refuse("argument", `${name} is ${least} to ${most}`, name);
    return value;
}

function toText(value, member) {
    if (typeof value === "string") return value;
    if (member.kind === "ratio") return Fraction.of(value, member.name).toString();
    if (["length", "pressure"].includes(member.kind)) return numberText(value, member.name);
    if (["integer", "unsigned"].includes(member.kind)) return String(wholeNumber(value, member.name, 0, 0x7fffffff));
    if (member.kind === "boolean" && typeof value === "boolean") return String(value);
    throw new TypeError(`${member.name} is text${member.kind === "date" ? ' such as "2021-10-14"' : ""}`);
}

/** Sets members of a struct from texts and exact numbers, by the library's reader of each. What is not given stays. */
export function fill(of, at, values) {
    for (const member of of.values) {
        const value = values[member.name];
        if (isGiven(value)) {
            const text = textPointer(toText(value, member));
            checked(
                (error) => c.rodt_record_set_text(of.record, at, textPointer(member.field), text, error),
                member.name,
            );
        }
    }
    return at;
}

const RATIO = layout("rodt_ratio");
const [INT64_LEAST, INT64_MOST] = [-(1n << 63n), (1n << 63n) - 1n];

/** Puts an exact number, or zero bytes where there is none: a rodt_ratio, rodt_length or rodt_pressure. */
export function putExact(value, name) {
    const at = RATIO.take();
    if (!isGiven(value)) return at;
    const { num, den } = Fraction.of(value, name);
    if (num < INT64_LEAST || num > INT64_MOST || den > INT64_MOST) {
        refuse("range", "the number has more digits than an exact 64-bit fraction holds", name);
    }
    view().setBigInt64(at + RATIO.offset("num"), num, true);
    view().setBigInt64(at + RATIO.offset("den"), den, true);
    return at;
}

/** Puts a length, text or an exact number of inches. */
export function putLength(value, name) {
    if (typeof value !== "string") return putExact(value, name);
    const [at, { at: text, size }] = [RATIO.take(), putText(value)];
    checked((error) => c.rodt_length_parse_strict_n(text, size, 0, at, 0, error), name);
    return at;
}

/** Puts a pressure, text or an exact number of psi. */
export function putPressure(value, name) {
    if (typeof value !== "string") return putExact(value, name);
    const [at, { at: text, size }] = [RATIO.take(), putText(value)];
    checked((error) => c.rodt_pressure_parse_n(text, size, 0, at, 0, error), name);
    return at;
}

/** Puts a day, text; zero bytes where there is none. */
export function putDate(value, name, order = 0) {
    const at = layout("rodt_date").take();
    if (!isGiven(value)) return at;
    if (value instanceof Date) throw new TypeError(`${name} is text such as "2021-10-14": a Date is a moment, no day`);
    const { at: text, size } = putText(textOnly(value, name));
    checked((error) => c.rodt_date_parse_n(text, size, order, at, error), name);
    return at;
}
