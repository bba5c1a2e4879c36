// SPDX-License-Identifier: Apache-2.0
// JavaScript's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line
// on standard output.
import { createInterface } from "node:readline";
import { judgeOf } from "./answers.mjs";
import { rt } from "./tap.mjs";

const judge = judgeOf(rt);
for await (const line of createInterface({ input: process.stdin })) {
    console.log(JSON.stringify(judge(JSON.parse(line))));
}
