// SPDX-License-Identifier: Apache-2.0
// Columns give the answers of single rows, however they lie in memory.
import assert from "node:assert/strict";
import { rt, run, thrown } from "./tap.mjs";

const CHAMBERS = ["30", "24L", "bolt C", "", "30 long", "x", "16", "clamp 36"];
const RELEASED = ["2 1/8", "2", "", "1.5", "2-Jan", "31/8", "2.437501"];
// Not one byte a character, and halves of one that must not meet.
const APPLIED = [
    "4 1/8",
    "4",
    "3 1/2",
    "2",
    "1",
    "4 1/4",
    "2 1/8",
    "9",
    "n/a",
    "4.312499",
    "54 mm",
    "3½",
    "4\ud83d",
    "\ude00 4",
];
const PSI = ["95", "60", "", "650 kPa", "?"];
const cycle = (list, rows) => Array.from({ length: rows }, (_, row) => list[row % list.length]);

function tableOf(rows) {
    return {
        Chamber: cycle(CHAMBERS, rows),
        Released: cycle(RELEASED, rows),
        applied: cycle(APPLIED, rows),
        PSI: cycle(PSI, rows),
    };
}

/** A list of texts as Arrow has it; null is a bit that is 0. */
function buffersOf(texts) {
    const parts = texts.map((text) => new TextEncoder().encode(text ?? "leftover"));
    const offsets = Int32Array.from([0, ...parts]);
    parts.forEach((part, i) => {
        offsets[i + 1] = offsets[i] + part.length;
    });
    const data = new Uint8Array(offsets[parts.length]);
    parts.forEach((part, i) => data.set(part, offsets[i]));
    const valid = new Uint8Array((texts.length + 7) >> 3);
    texts.forEach((text, i) => {
        if (text !== null) valid[i >> 3] |= 1 << (i % 8);
    });
    return { offsets, data, valid };
}

function sameColumns(found, wanted) {
    for (const name of ["stroke", "verdict", "reasons", "flags", "limit", "strokeParts"])
        assert.deepEqual(found[name], wanted[name], name);
}

function sameAsRow(answer, finding, place) {
    assert.deepEqual(
        [answer.verdict, answer.reasons, String(answer.appliedStroke), String(answer.limit)],
        [finding.verdict, finding.reasons, String(finding.appliedStroke), String(finding.limit)],
        place,
    );
}

run({
    textsAreJudgedAsRows() {
        const rows = 3000;
        const table = tableOf(rows);
        const answers = rt.judgeColumns(table);
        assert.equal(answers.length, rows);
        for (let row = 0; row < rows; row++) {
            const { finding } = rt.judgeRow({
                chamber: table.Chamber[row],
                released: table.Released[row],
                applied: table.applied[row],
                psi: table.PSI[row],
            });
            sameAsRow(answers.at(row), finding, `row ${row}`);
        }
        const counts = answers.counts();
        assert.equal(
            Object.values(counts).reduce((sum, count) => sum + count),
            rows,
        );
        assert.equal([...answers].length, rows);
        assert.throws(() => answers.at(rows), RangeError);
    },

    /** More rows than one chunk, and not a multiple of one. */
    buffersAreJudgedAsLists() {
        const rows = 3 * (1 << 15) + 13;
        const lists = Object.fromEntries(
            Object.entries(tableOf(rows)).map(([name, texts]) => [
                name,
                texts.map((text, i) => (i % 17 === 3 ? null : text)),
            ]),
        );
        const buffers = Object.fromEntries(Object.entries(lists).map(([name, texts]) => [name, buffersOf(texts)]));
        sameColumns(rt.judgeColumns(buffers), rt.judgeColumns(lists));
        sameColumns(rt.judgeColumns(new Map(Object.entries(buffers))), rt.judgeColumns(lists));
        const part = { ...buffers.Chamber, valid: undefined };
        assert.equal(rt.judgeColumns({ ...buffers, Chamber: part }).length, rows);
    },

    numbersAreJudgedAsTexts() {
        const table = {
            chamber: [30, 24, 30],
            released: [2, 2n, new rt.Fraction(17, 8)],
            applied: new Int8Array([4, 4, 4]),
        };
        const texts = { chamber: ["30", "24", "30"], released: ["2", "2", "2.125"], applied: ["4", "4", "4"] };
        sameColumns(rt.judgeColumns(table, { defaultPsi: 95 }), rt.judgeColumns(texts, { defaultPsi: "95" }));
    },

    whatRowsShare() {
        const table = { chamber: ["30"], released: ["50"], applied: ["101,6"] };
        const { finding } = rt.judgeRow({
            chamber: "30",
            released: "50",
            applied: "101,6",
            psi: "95",
            date: "2024-06-05",
            defaultUnit: "mm",
            decimalComma: true,
        });
        const shared = { defaultUnit: "mm", decimalComma: true, defaultPsi: "95", defaultDate: "2024-06-05" };
        sameAsRow(rt.judgeColumns(table, shared).at(0), finding);
        const dated = { chamber: ["clamp 36"], released: ["2"], applied: ["4 3/8"], Date: ["13/10/2021"] };
        assert.equal(String(rt.judgeColumns(dated, { dateOrder: "day-first" }).at(0).limit), "2 1/4");
        assert.equal(thrown(() => rt.judgeColumns(table, { defaultPsi: "x" })).field, "psi");
    },

    headings() {
        const table = {
            Unit: ["T-1", "T-2"],
            Chamber: ["30", "30"],
            RELEASED: ["2", "2"],
            applied: ["4", "4 1/8"],
            "psi reading": ["60", "60"],
            Other: ["a", "b"],
        };
        const answers = rt.judgeColumns(table);
        assert.deepEqual(answers.unread.map(({ heading, field }) => [heading, field]).sort(), [
            ["Unit", "unit"],
            ["psi reading", "psi"],
        ]);
        assert.equal(answers.at(0).verdict, "in-adjustment");
        const named = rt.judgeColumns(table, { columns: { psi: "psi reading", unit: null } });
        assert.deepEqual([named.unread.length, named.at(0).reasons.includes("pressure-low")], [0, true]);
        const millimetres = { chamber: ["30"], "Released (mm)": ["50"], "Applied (mm)": ["101"] };
        const columns = { released: "Released (mm)", applied: "Applied (mm)" };
        assert.match(thrown(() => rt.judgeColumns(millimetres, { columns })).message, /names mm/);
        assert.equal(rt.judgeColumns(millimetres, { columns, defaultUnit: "mm" }).length, 1);
        assert.match(thrown(() => rt.judgeColumns({ ...table, chamber: ["16", "16"] })).message, /both mean chamber/);
        assert.match(
            thrown(() => rt.judgeColumns({ chamber: ["30"], released: ["2"] })).message,
            /column applied is needed/,
        );
        assert.match(
            thrown(() => rt.judgeColumns(table, { columns: { psi: "nowhere" } })).message,
            /no column "nowhere"/,
        );
        assert.match(thrown(() => rt.judgeColumns(table, { columns: { pressures: "PSI" } })).message, /is no field/);
        const doubtful = rt.judgeColumns({ ...table, engine: ["D13", ""] }).unread;
        assert.ok(doubtful.some(({ field }) => field === "engine"));
    },

    brokenColumns() {
        const good = { chamber: ["30"], released: ["2"], applied: ["4"] };
        const withReleased = (released) => () => rt.judgeColumns({ ...good, released });
        assert.throws(withReleased(["2", "2"]), RangeError);
        assert.throws(withReleased("2"), TypeError);
        assert.throws(withReleased(null), TypeError);
        const data = new Uint8Array([50]);
        for (const offsets of [
            [0, 2],
            [1, 0],
            [-1, 1],
            [0, 1, 2],
        ]) {
            assert.throws(withReleased({ offsets: Int32Array.from(offsets), data }), RangeError, String(offsets));
        }
        assert.throws(withReleased({ offsets: [0, 1], data }), TypeError);
        assert.throws(withReleased({ offsets: Int32Array.of(0, 1), data: [50] }), TypeError);
        assert.throws(withReleased({ offsets: Int32Array.of(0, 1), data, valid: new Uint8Array(0) }), RangeError);
        assert.throws(() => rt.judgeColumns("fleet.csv"), TypeError);
        assert.equal(rt.judgeColumns({ chamber: [], released: [], applied: [] }).length, 0);
    },

    plansAreJudgedAsRows() {
        const plan = new rt.Plan("us-fmcsr", { psi: 95 });
        const codes = ["30", "24L"].map((chamber) => plan.add(chamber));
        const rows = (1 << 15) + 9;
        const eighths = (row) => 8 + (row % 40);
        const released = new Int32Array(rows).fill(2 * rt.UNITS_PER_INCH);
        const applied = Int32Array.from({ length: rows }, (_, row) => 8 * rt.UNITS_PER_64TH * eighths(row));
        const chamber = Uint8Array.from({ length: rows }, (_, row) => codes[row % 2]);
        const psi = Int32Array.from({ length: rows }, (_, row) => rt.UNITS_PER_PSI * (row % 3 ? 95 : 60));
        const answers = plan.judge({ released, applied, chamber, psi });
        for (let row = 0; row < 300; row++) {
            const finding = rt.judge(["30", "24L"][row % 2], 2, new rt.Fraction(eighths(row), 8), {
                psi: row % 3 ? 95 : 60,
            });
            sameAsRow(answers.at(row), finding, `row ${row}`);
        }
        const wide = (column) => BigInt64Array.from(column, BigInt);
        sameColumns(plan.judge({ released: wide(released), applied: wide(applied), chamber, psi }), answers);
        const valid = new Uint8Array((rows + 7) >> 3).fill(0xff);
        valid[(1 << 15) >> 3] = 0xfe;
        const some = plan.judge({ released: { values: released, valid }, applied, chamber, psi });
        assert.deepEqual(
            [some.stroke[1 << 15], some.stroke[1 + (1 << 15)]],
            [rt.NO_STROKE, answers.stroke[1 + (1 << 15)]],
        );
        plan.free();
        plan.free();
        assert.throws(() => plan.add("30"), /freed/);
        assert.throws(() => plan.judge({ released, applied, chamber }), /freed/);
    },

    plansWithDays() {
        const plan = new rt.Plan();
        const code = plan.add("clamp 36");
        const day = (text) => Math.round(Date.parse(text) / 864e5);
        const column = (...values) => Int32Array.from(values);
        const inch = rt.UNITS_PER_INCH;
        const answers = plan.judge({
            released: column(inch, inch),
            applied: column(3 * inch, 3 * inch),
            chamber: new Uint8Array([code, code]),
            date: column(day("2021-10-13"), day("2021-10-14")),
        });
        assert.deepEqual(
            [...answers].map((answer) => String(answer.limit)),
            ["2021-10-13", "2021-10-14"].map((text) => String(rt.ruleSet().findLimit("clamp 36", text).limit)),
        );
        assert.throws(
            () => plan.judge({ released: column(1), applied: column(2), chamber: new Uint8Array(2) }),
            RangeError,
        );
        assert.throws(() => plan.judge({ released: column(1), applied: column(2) }), rt.RodtravelError);
        assert.equal(thrown(() => plan.add("wrong")).field, "chamber");
    },
});
