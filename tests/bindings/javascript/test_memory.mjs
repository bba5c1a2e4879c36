// SPDX-License-Identifier: Apache-2.0
// The library's memory does not grow, whatever is called and however it ends: a million calls, and objects that go.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { folder, run } from "./tap.mjs";

const body = readFileSync(join(folder, "rodtravel.mjs"), "utf8").replace(/^export const [^\n]*$/m, "");
const { rt, memory } = new Function(`${body}\nreturn { rt: $index, memory: $memory.memory };`)();
const used = () => memory().buffer.byteLength;

function fails(call) {
    try {
        call();
    } catch {
        return;
    }
    throw new Error("it was not refused");
}

const french = rt.catalogue("fr");
const end = { position: "1L", finding: rt.judge("30", "2", "4") };
const table = { chamber: ["30", "24"], released: ["2", "2"], applied: ["4", "x"] };

/** Each with how often it is called; together a million. */
const CALLS = [
    [740000, () => rt.readPosition("1L")],
    [100000, () => rt.readLength("2 1/8")],
    [100000, () => fails(() => rt.readPosition("x"))],
    [20000, () => rt.judge("30", "2", "4 1/8", { psi: 95 })],
    [10000, () => fails(() => rt.judge("30", "2", "4-Jan"))],
    [5000, () => rt.judgeAir("warning", { pressure: 60 })],
    [10000, () => rt.judgeRow({ chamber: "30", released: "x" })],
    [10000, () => french.say(end.finding)],
    [2000, () => rt.judgeColumns(table)],
    [2000, () => rt.judgeVehicle([end])],
    [500, () => rt.identify({ stamp: "30" })],
    [500, () => fails(() => rt.loadRules("family,size,class,limit\nclamp,30,standard,3\n"))],
];

await run({
    aMillionCalls() {
        for (const [, call] of CALLS) for (let i = 0; i < 100; i++) call();
        const before = used();
        for (const [times, call] of CALLS) for (let i = 0; i < times; i++) call();
        assert.equal(
            CALLS.reduce((sum, [times]) => sum + times, 0),
            1e6,
        );
        assert.equal(used(), before);
    },

    /** More than the stack holds. */
    largeCalls() {
        const column = (text) => Array(20000).fill(text);
        const many = { chamber: column("30"), released: column("2"), applied: column("4") };
        const judge = () => rt.judgeColumns(many);
        for (let i = 0; i < 3; i++) judge();
        const before = used();
        for (let i = 0; i < 30; i++) judge();
        assert.equal(used(), before);
    },

    plansAreGivenBack() {
        const make = () => new rt.Plan("us-fmcsr", { psi: 95 }).free();
        for (let i = 0; i < 100; i++) make();
        const before = used();
        for (let i = 0; i < 20000; i++) make();
        assert.equal(used(), before);
    },

    /** Rule sets and plans that nothing has any more are given back by the collector. */
    async objectsThatGo() {
        // Until the collector has told of an object that went last; it takes its time on a busy machine.
        const collected = async () => {
            let isTold = false;
            const told = new FinalizationRegistry(() => (isTold = true));
            told.register({}, null);
            for (let turns = 0; turns < 2 || !isTold; turns++) {
                globalThis.gc();
                await new Promise((resolve) => {
                    setTimeout(resolve, 1);
                });
            }
        };
        const make = async (times) => {
            for (let i = 0; i < times; i++) {
                const own = rt.loadRules("family,size,class,limit\nclamp,30,standard,1 7/8\n", { name: "yard" });
                new rt.Plan(own).add("30");
                if (i % 500 === 499) await collected();
            }
        };
        await make(3000);
        const before = used();
        await make(6000);
        assert.ok(used() <= 1.02 * before, `${before} bytes grew to ${used()}`);
    },

    /** A finding keeps the rule set that it points into. */
    async findingsKeepTheirRules() {
        const finding = rt.judge("30", "2", "4", {
            rules: rt.loadRules("family,size,class,limit\nclamp,30,standard,1 7/8\n"),
        });
        const said = finding.sentences.join();
        for (let i = 0; i < 20; i++) {
            globalThis.gc();
            await new Promise((resolve) => {
                setTimeout(resolve, 1);
            });
            rt.loadRules("family,size,class,limit\nclamp,24,standard,1 1/2\n");
        }
        assert.equal(finding.sentences.join(), said);
    },
});
