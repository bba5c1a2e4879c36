// SPDX-License-Identifier: Apache-2.0
// The one family of errors.
import { camel, enumeration, layout } from "./describe.mjs";
import { c, copyOf, scratch, textAt } from "./memory.mjs";

const ERROR = layout("rodt_error");
const statuses = enumeration("rodt_status");
const keptErrors = new WeakMap();

/**
 * An input was refused; `message` is a sentence for a person, with the place in front of it.
 *
 * `status` is the stable word of the kind of fault, "date-cell"; `text` the bare sentence; `field` which input,
 * "psiAfter"; `column` counts characters from 1, `line` those of a table; `index` is the number of the wheel end or
 * row, from 0. What does not apply is null. A Catalogue says it in another language.
 *
 * A binary float, or an argument of a wrong type, is a TypeError: no text was read wrongly, the program has to be
 * changed.
 */
export class RodtravelError extends Error {
    constructor({ status, text, field = null, column = null, line = null, index = null }) {
        const places = [
            field,
            index !== null && `number ${index}`,
            line && `line ${line}`,
            column && `column ${column}`,
        ];
        const place = places.filter(Boolean).join(", ");
        super(place ? `${place}: ${text}` : text);
        this.name = "RodtravelError";
        Object.assign(this, { status, text, field, column, line, index });
    }
}

/** The bytes of the error in C, for another language; undefined of one that was not made there. */
export const errorBytes = (error) => keptErrors.get(error);

/** The error of a struct; `field` where it names none. Where the line is that of a row, `rows` is true. */
export function errorAt(at, field = null, rows = false) {
    const found = ERROR.read(at);
    const error = new RodtravelError({
        status: found.status,
        text: found.text,
        field: found.field === null ? field : camel(found.field),
        column: found.column || null,
        line: (!rows && found.line) || null,
        index: rows && found.line ? found.line - 1 : null,
    });
    keptErrors.set(error, copyOf(at, ERROR.size));
    return error;
}

/** The same error, of the wheel end or row of that number. */
export function withIndex(error, index) {
    if (!(error instanceof RodtravelError)) return error;
    const made = new RodtravelError({ ...error, index });
    keptErrors.set(made, keptErrors.get(error));
    return made;
}

/** Refuses with a sentence of one's own. */
export function refuse(status, text, field) {
    throw new RodtravelError({ status, text, field });
}

/** Throws unless a status is 0; `at` is its error, or 0. */
export function check(status, at = 0, field = null, rows = false) {
    if (status === 0) return;
    const word = statuses.wordOf(status);
    if (at !== 0 && ERROR.read(at).status === word) throw errorAt(at, field, rows);
    refuse(word, textAt(c.rodt_status_text(status)), field);
}

/** Calls what takes an error as its last argument, and throws what it says. */
export function checked(call, field = null, rows = false) {
    return scratch(() => {
        const error = ERROR.take();
        check(call(error), error, field, rows);
    });
}

/** The text that a function of C writes. */
export function textFrom([status, text], field = null) {
    check(status, 0, field);
    return text;
}
