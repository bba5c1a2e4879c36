// SPDX-License-Identifier: Apache-2.0
// Lengths, pressures and days: read from texts, computed and written exactly.
import { dateAt, enumeration, exactAt, layout } from "./describe.mjs";
import { check, checked, textFrom } from "./error.mjs";
import { Fraction } from "./fraction.mjs";
import { c, putText, scratch, take, uint32At, written } from "./memory.mjs";
import {
    fill,
    numberOfWord,
    onlyKnown,
    putDate,
    putExact,
    putLength,
    putPressure,
    textOnly,
    wholeNumber,
} from "./values.mjs";

const STYLE = layout("rodt_style");
const LENGTH = layout("rodt_length");

function putStyle({ decimalComma = false, ...units }) {
    return fill(STYLE, STYLE.take(), { ...units, decimalComma });
}

function readWith(reader, units, text, name, style) {
    return scratch(() => {
        const [out, unit, { at, size }] = [LENGTH.take(), take(4), putText(textOnly(text, name))];
        checked((error) => reader(at, size, style, out, unit, error));
        return Object.freeze([exactAt(out), enumeration(units).wordOf(uint32At(unit))]);
    });
}

/** Reads a length and says in which unit it was written: [inches, "in"]. Options as of readLength. */
export function readLengthUnit(text, options = {}) {
    const { unit = "in", decimalComma } = onlyKnown(options, ["unit", "decimalComma"], "readLengthUnit");
    return scratch(() => readWith(c.rodt_length_parse_n, "rodt_unit", text, "text", putStyle({ unit, decimalComma })));
}

/**
 * Reads a length as a person writes it, "1 3/4", "2-1/8 in", "44.45 mm", as a Fraction of an inch. `unit` is that of a
 * number without one. Throws a RodtravelError with the column. A blank that was lost is not noticed here.
 */
export function readLength(text, options = {}) {
    return readLengthUnit(text, options)[0];
}

/** Reads a pressure and says in which unit it was written: [psi, "kpa"]. Options as of readPressure. */
export function readPressureUnit(text, options = {}) {
    const { unit: pressureUnit = "psi", decimalComma } = onlyKnown(
        options,
        ["unit", "decimalComma"],
        "readPressureUnit",
    );
    return scratch(() =>
        readWith(c.rodt_pressure_parse_n, "rodt_pressure_unit", text, "text", putStyle({ pressureUnit, decimalComma })),
    );
}

/** Reads a gauge pressure, "95", "92.5 psi", "655 kPa", as a Fraction of a psi. */
export function readPressure(text, options = {}) {
    return readPressureUnit(text, options)[0];
}

/**
 * Reads a date of a form as "2021-10-14". `order` is "day-first", "month-first" or "year-first"; without it a date that
 * can be two days is refused.
 */
export function readDate(text, options = {}) {
    const { order = "unknown" } = onlyKnown(options, ["order"], "readDate");
    return scratch(() =>
        dateAt(putDate(textOnly(text, "text"), null, numberOfWord("rodt_date_order", order, "order"))),
    );
}

/** Writes inches as a mixed fraction: "1 3/4". */
export function writeLength(length) {
    return scratch(() => {
        const at = putLength(length, "length");
        return textFrom(
            written((...room) => c.rodt_length_format(at, ...room)),
            "length",
        );
    });
}

/** Writes a decimal number with so many digits, 0 to 12, in inches, millimetres or centimetres. */
export function writeDecimal(length, digits, options = {}) {
    const { unit = "in", rounding = "half-even" } = onlyKnown(options, ["unit", "rounding"], "writeDecimal");
    return scratch(() => {
        const at = putLength(length, "length");
        const how = [
            numberOfWord("rodt_unit", unit, "unit"),
            wholeNumber(digits, "digits", 0, 12),
            numberOfWord("rodt_rounding", rounding, "rounding"),
        ];
        return textFrom(
            written((...room) => c.rodt_length_format_decimal(at, ...how, ...room)),
            "length",
        );
    });
}

/** Rounds a length to a whole number of divisions: the nearest sixteenth is `roundLength(length, "1/16")`. */
export function roundLength(length, division, options = {}) {
    const { rounding = "half-even" } = onlyKnown(options, ["rounding"], "roundLength");
    return scratch(() => {
        const [from, to, out] = [putLength(length, "length"), putLength(division, "division"), LENGTH.take()];
        check(c.rodt_length_round(from, to, numberOfWord("rodt_rounding", rounding, "rounding"), out), 0, "division");
        return exactAt(out);
    });
}

/** Writes a pressure: "95", or with a unit, "psi" or "kpa", as "650 kPa". */
export function writePressure(pressure, options = {}) {
    const { unit = null } = onlyKnown(options, ["unit"], "writePressure");
    return scratch(() => {
        const at = putPressure(pressure, "pressure");
        const number = unit === null ? null : numberOfWord("rodt_pressure_unit", unit, "unit");
        return textFrom(
            written((...room) =>
                number === null
                    ? c.rodt_pressure_format(at, ...room)
                    : c.rodt_pressure_format_unit(at, number, ...room),
            ),
            "pressure",
        );
    });
}

function converted(call, value, name) {
    return scratch(() => {
        const out = LENGTH.take();
        const { num, den } = Fraction.of(value, name);
        check(putExact(value, name) && call(num, den, out), 0, name);
        return exactAt(out);
    });
}

/** Inches of so many millimetres, exactly. */
export const inchesFromMm = (millimetres) => converted(c.rodt_length_from_mm, millimetres, "millimetres");

/** Psi of so many kilopascals, exactly. */
export const psiFromKpa = (kilopascals) => converted(c.rodt_pressure_from_kpa, kilopascals, "kilopascals");
