// SPDX-License-Identifier: Apache-2.0
// bench.mjs call|lists|column COUNT (../languages.py)
import { pathToFileURL } from "node:url";
const rt = await import(pathToFileURL(`${process.env.PACKAGE}/node.mjs`));

const [what, given] = process.argv.slice(2);
const count = Number(given);
if (what === "call") {
    for (let i = 0; i < count; i++) rt.judge("30L", "2 3/4", "5 5/16", { psi: "95" }).verdict;
} else {
    const applied = Array.from({ length: count }, (_, i) => `${4 + (i % 2)} ${1 + 2 * (i % 8)}/16`);
    const all = (text) => new Array(count).fill(text);
    const columns = { chamber: all("30L"), released: all("2 3/4"), applied, psi: all("95") };
    if (what === "column") rt.judgeColumns(columns);
}
