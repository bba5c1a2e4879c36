// SPDX-License-Identifier: Apache-2.0
// Runs the functions of an object as tests and says how they went, in the Test Anything Protocol.
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

export const folder = process.env.PACKAGE;
/** The package as a program in Node imports it. */
export const rt = await import(pathToFileURL(join(folder, "node.mjs")));
export const require = createRequire(import.meta.url);

export async function run(tests) {
    const all = Object.entries(tests);
    console.log(`1..${all.length}`);
    for (const [i, [name, test]] of all.entries()) {
        try {
            await test();
            console.log(`ok ${i + 1} - ${name}`);
        } catch (error) {
            console.log(`not ok ${i + 1} - ${name}\n${String(error.stack).replace(/^/gm, "# ")}`);
            process.exitCode = 1;
        }
    }
}

const CELL = /("(?:[^"]|"")*"|[^,]*)(,|$)/gy;

/** The rows of a file of cases by the names of its columns. */
export function rows(name, path = join(process.env.CASES, name)) {
    const lines = readFileSync(path, "utf8")
        .split("\n")
        .filter((line) => line !== "" && !line.startsWith("#"));
    const cells = (line) => {
        const found = [];
        for (const [, cell, end] of line.matchAll(CELL)) {
            found.push(cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell);
            if (end === "") break;
        }
        return found;
    };
    const [head, ...rest] = lines.map(cells);
    return rest.map((row) => Object.fromEntries(head.map((column, i) => [column, row[i]])));
}

/** The exact number of "13/8" or "1.5". */
export function exact(text) {
    const [num, den = "1"] = text.split("/");
    const [whole, decimals = ""] = num.split(".");
    return new rt.Fraction(BigInt(whole + decimals), BigInt(den) * 10n ** BigInt(decimals.length));
}

/** The error that a call throws. */
export function thrown(call) {
    try {
        call();
    } catch (error) {
        return error;
    }
    throw new Error("nothing was thrown");
}
