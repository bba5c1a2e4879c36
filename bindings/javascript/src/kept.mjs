// SPDX-License-Identifier: Apache-2.0
// What an object was made of: the bytes of its struct, and what must live as long because the bytes point there.
import { copyOf, put } from "./memory.mjs";

const kept = new WeakMap();

/** Keeps the struct at `at` for an object, and freezes it. */
export function keep(object, layout, at, ...parts) {
    kept.set(object, { layout, bytes: copyOf(at, layout.size), parts });
    return Object.freeze(object);
}

/** Of a record: an object of its class with the members of the struct at `at`. */
export function keptRecord(made, layout, at, ...parts) {
    return keep(layout.readInto(made, at), layout, at, ...parts);
}

function entryOf(object, name) {
    const entry = typeof object === "object" && object !== null ? kept.get(object) : undefined;
    if (entry === undefined) {
        throw new TypeError(`${name} is an object that a function of rodtravel gave, not a copy of one`);
    }
    return entry;
}

/** What else was kept for an object. */
export const partsOf = (object, name) => entryOf(object, name).parts;

/** The record that an object is, "rodt_finding". */
export const recordName = (object, name) => entryOf(object, name).layout.name;

/** The bytes of its struct. */
export const bytesOf = (object, name, record) => {
    const { layout, bytes } = entryOf(object, name);
    if (layout.name !== record) throw new TypeError(`${name} is another kind of object`);
    return bytes;
};

/** The struct once more, until the scratch ends. */
export const putKept = (object, name, record) => put(bytesOf(object, name, record));
