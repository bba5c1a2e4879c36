// SPDX-License-Identifier: Apache-2.0
// Service brake chambers.
import { exactAt, layout } from "./describe.mjs";
import { check, checked, textFrom } from "./error.mjs";
import { c, putText, scratch, written } from "./memory.mjs";
import { fill, onlyKnown, putExact, putLength, putPressure } from "./values.mjs";

const CHAMBER = layout("rodt_chamber");
const CHAMBER_ROW = layout("rodt_chamber_row");
const chamberMembers = CHAMBER.values.map((member) => member.name);

/** True of an object that is no list, no date and the like. */
const isPlain = (value) => Object.prototype.toString.call(value) === "[object Object]";

/** Puts a chamber: a text, "30L", or an object as readChamber gives it. */
export function putChamber(value, name = "chamber") {
    const at = CHAMBER.take();
    if (typeof value === "string") {
        const { at: text, size } = putText(value);
        checked((error) => c.rodt_chamber_parse_n(text, size, at, error), name);
    } else if (isPlain(value)) {
        fill(CHAMBER, at, onlyKnown(value, chamberMembers, name));
        checked((error) => c.rodt_chamber_check(at, error), name);
    } else {
        throw new TypeError(`${name} is text, or an object as readChamber gives it`);
    }
    return at;
}

/**
 * Reads a chamber as it is written, "30", "T30", "30LS", "24 long", "24/30", "bolt C", "DD-3", as an object of family,
 * strokeClass, size, springSize, ratedStroke and markedLimit. What the text does not say is "unknown" or null. An
 * object of some of these is checked and completed.
 */
export function readChamber(text) {
    return scratch(() => CHAMBER.read(putChamber(text)));
}

/** The name of a chamber that readChamber reads back: "clamp 30 long". */
export function writeChamber(chamber) {
    return scratch(() => {
        const at = putChamber(chamber);
        return textFrom(
            written((...room) => c.rodt_chamber_format(at, ...room)),
            "chamber",
        );
    });
}

/** Every row of a table of the library. */
export function rowsOf(of, count, row) {
    return Object.freeze(Array.from({ length: count }, (_, i) => of.readConstant(row(i))));
}

/** Every chamber that the tables know, with its outside diameter. */
export function chamberRows() {
    return rowsOf(CHAMBER_ROW, c.rodt_chamber_row_count(), c.rodt_chamber_row_at);
}

/** Calls a function that writes one exact number. */
export function exactFrom(call, field) {
    return scratch(() => {
        const out = putExact(null);
        check(call(out), 0, field);
        return exactAt(out);
    });
}

/** Ideal pushrod force in pound-force: type number x pressure. Information only: it leaves out springs and friction. */
export function pushrodForce(chamber, pressure) {
    return exactFrom(
        (out) => c.rodt_chamber_pushrod_force(putChamber(chamber), putPressure(pressure, "pressure"), out),
        "chamber",
    );
}

/** AL factor: type number x effective arm length, in3. */
export function alFactor(chamber, armLength) {
    return exactFrom(
        (out) => c.rodt_chamber_al_factor(putChamber(chamber), putLength(armLength, "armLength"), out),
        "chamber",
    );
}

/** Rated volume of a chamber in in3, by Table V of 49 CFR 571.121. */
export function ratedVolume(chamber) {
    return exactFrom((out) => c.rodt_chamber_rated_volume(putChamber(chamber), out), "chamber");
}
