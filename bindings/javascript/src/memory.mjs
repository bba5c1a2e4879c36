// SPDX-License-Identifier: Apache-2.0
// The compiled library and its memory. What a call needs there is taken from a stack that the call gives back as a
// whole, however it ends, so nothing is left.
import { WASM } from "./wasm.mjs";

function moduleBytes() {
    const signs = atob(WASM);
    const made = new Uint8Array(signs.length);
    for (let i = 0; i < made.length; i++) made[i] = signs.charCodeAt(i);
    return made;
}

const compiled = new WebAssembly.Module(moduleBytes());
const imports = {};
// The C library's printf names the functions of a file that is never written.
for (const { module: from, name } of WebAssembly.Module.imports(compiled)) {
    (imports[from] ??= {})[name] = () => {
        throw new Error("the library writes no file");
    };
}

/** Every function of C that is called from here. */
export const c = new WebAssembly.Instance(compiled, imports).exports;
c._initialize();

const STACK_BYTES = 1 << 18;
const heapBase = c.__heap_base.value;
let bytes = new Uint8Array(c.memory.buffer);
let data = new DataView(c.memory.buffer);
let top = c.malloc(STACK_BYTES);
const stackEnd = top + STACK_BYTES;
const large = [];

/** The memory as bytes. A call into C can make it grow, and then these are others. */
export function memory() {
    if (bytes.length === 0) {
        bytes = new Uint8Array(c.memory.buffer);
        data = new DataView(c.memory.buffer);
    }
    return bytes;
}

/** The same for numbers. */
export function view() {
    memory();
    return data;
}

export const uint32At = (at) => view().getUint32(at, true);
export const setUint32 = (at, value) => view().setUint32(at, value, true);

/** True of constants of the library, which stay where they are. */
export const isConstant = (at) => at < heapBase;

/** Runs `work`, and gives back what it took. */
export function scratch(work) {
    const start = top;
    const count = large.length;
    try {
        return work();
    } finally {
        top = start;
        while (large.length > count) c.free(large.pop());
    }
}

function room(size) {
    const rounded = (size + 15) & ~15;
    if (top + rounded <= stackEnd) {
        top += rounded;
        return top - rounded;
    }
    const block = c.malloc(size);
    if (block === 0) throw new RangeError("there is no memory for the library");
    large.push(block);
    return block;
}

/** So many zero bytes, until the scratch around the call ends. */
export function take(size) {
    const at = room(size);
    memory().fill(0, at, at + size);
    return at;
}

/** A copy of bytes there. */
export function put(source) {
    const at = room(Math.max(source.length, 1));
    memory().set(source, at);
    return at;
}

/** A copy of bytes from there. */
export const copyOf = (at, size) => memory().slice(at, at + size);

const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** Writes a text without its end to where there is room for three bytes a character; returns how many it took. */
export const writeText = (text, at) => encoder.encodeInto(text, memory().subarray(at, at + 3 * text.length)).written;

/** A text and its size in bytes. A zero byte in it would end it: it becomes a sign that no reader accepts. */
export function putText(text) {
    const whole = text.includes("\0") ? text.replaceAll("\0", "\ufffd") : text;
    const at = room(3 * whole.length + 1);
    const size = writeText(whole, at);
    memory()[at + size] = 0;
    return { at, size };
}

/** Where a text is that ends with a zero byte. */
export const textPointer = (text) => putText(text).at;

function decode(at) {
    const all = memory();
    return decoder.decode(all.subarray(at, all.indexOf(0, at)));
}

const constants = new Map();

/** The text that a pointer points to; null for NULL. */
export function textAt(at) {
    if (at === 0) return null;
    if (!isConstant(at)) return decode(at);
    let text = constants.get(at);
    if (text === undefined) constants.set(at, (text = decode(at)));
    return text;
}

const FIRST_ROOM = 1024;

/** What a function of C writes that ends in (text, size, needed): [status, text]. */
export function written(write) {
    return scratch(() => {
        const needed = take(4);
        const first = room(FIRST_ROOM);
        const status = write(first, FIRST_ROOM, needed);
        const size = uint32At(needed);
        if (size <= FIRST_ROOM) return [status, status === 0 ? decode(first) : ""];
        const second = room(size);
        return [write(second, size, needed), decode(second)];
    });
}
