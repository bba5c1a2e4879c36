// SPDX-License-Identifier: Apache-2.0
// The digest of what the package answers to the vectors of the conformance kit, in Node or in any browser.
import { judgeOf } from "./answers.mjs";

/** Names in their order, nothing between: the form that the digests are of. */
function canonical(value) {
    if (Array.isArray(value)) return `[${value.map(canonical)}]`;
    if (value === null || typeof value !== "object") return JSON.stringify(value);
    const names = Object.keys(value).sort();
    return `{${names.map((name) => `${JSON.stringify(name)}:${canonical(value[name])}`)}}`;
}

/** `lines` is a file of vectors; the digest is hexadecimal, as `digests.txt` has it. */
export async function digestOf(rt, lines) {
    const judge = judgeOf(rt);
    const vectors = lines.trim().split("\n").map((line) => JSON.parse(line));
    const answers = vectors.map(({ id, question }) => `${canonical(judge({ id, ...question }))}\n`);
    const sum = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(answers.join("")));
    return Array.from(new Uint8Array(sum), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
