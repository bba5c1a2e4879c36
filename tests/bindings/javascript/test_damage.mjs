// SPDX-License-Identifier: Apache-2.0
// No damaged, missing or contradictory argument, cell or column makes an answer more favourable (lib/README.md): every
// entry of cases/entries.csv in turn, left out, replaced by the texts of cases/damages.csv and by what is no text.
import assert from "node:assert/strict";
import { rows, rt, run, thrown } from "./tap.mjs";

const camel = (name) => name.replace(/_(\w)/g, (_, letter) => letter.toUpperCase());
const ENTRIES = new Map(rows("entries.csv").map((row) => [`${row.group} ${camel(row.entry)}`, row]));
const TEXTS = rows("damages.csv");
const SOUND = Object.fromEntries(
    [...ENTRIES].filter(([, row]) => row.group === "reading").map(([key, row]) => [key.split(" ")[1], row.sound]),
);
const [GOOD, AT, OVER, DEAD] = ["3 15/16", "4", "4 1/16", "2"];
const PASS = "in-adjustment";
const OBJECTS = [2.5, NaN, true, Symbol("2"), [], {}, ["2"], new Date(0), () => "2", new Uint8Array(1)];

/** [text, what it is]: nothing, a value, or unreadable. */
function damages(kind) {
    const how = (row) =>
        row.value_of.split(" ").includes(kind)
            ? "value"
            : row.nothing_for.split(" ").includes(kind)
              ? "nothing"
              : "unreadable";
    return [["", "nothing"], [" \t", "nothing"], [null, "nothing"], ...TEXTS.map((row) => [row.text, how(row)])];
}

/** Sound readings on each side of the limit, and passes that one entry contradicts. */
const bases = [
    ...[GOOD, AT, OVER, DEAD].map((applied) => ({ ...SOUND, applied })),
    ...Object.keys(SOUND)
        .filter((entry) => ENTRIES.get(`reading ${entry}`).contrary !== "")
        .map((entry) => ({ ...SOUND, applied: GOOD, [entry]: ENTRIES.get(`reading ${entry}`).contrary })),
];

/** null is a refusal. */
function expect(row, how, before, after, said) {
    if (how === "unreadable")
        assert.ok(after === null || after !== PASS || (row.kind === "date" && before === PASS), said);
    if (how === "nothing") assert.ok(after === null || after !== PASS || before === PASS || row.absence !== "", said);
}

function verdictOf(call) {
    try {
        return call().verdict;
    } catch (error) {
        assert.ok(error instanceof rt.RodtravelError || error instanceof TypeError, error.stack);
        return null;
    }
}

const refused = (call) => {
    const error = thrown(call);
    assert.ok(error instanceof TypeError || error instanceof rt.RodtravelError, error.stack);
};

run({
    rowsAndColumns() {
        for (const base of bases) {
            const before = rt.judgeRow(base).finding.verdict;
            for (const entry of Object.keys(SOUND)) {
                const row = ENTRIES.get(`reading ${entry}`);
                const column = damages(row.kind);
                const table = Object.fromEntries(
                    Object.entries(base).map(([name, text]) => [name, [text, ...column.map(() => text)]]),
                );
                table[entry] = [base[entry], ...column.map(([text]) => text)];
                const answers = rt.judgeColumns(table);
                column.forEach(([text, how], i) => {
                    const { finding, error } = rt.judgeRow({ ...base, [entry]: text });
                    const said = `${entry} ${JSON.stringify(text)}: ${before} became ${finding.verdict}`;
                    assert.deepEqual(
                        [answers.at(i + 1).verdict, answers.at(i + 1).reasons],
                        [finding.verdict, finding.reasons],
                        said,
                    );
                    if (how === "unreadable") assert.equal(error?.field, entry, said);
                    expect(row, how, before, finding.verdict, said);
                });
            }
        }
    },

    /** One wheel end is refused where a row is open. */
    judge() {
        const conditions = { engine: "engineRunning", springBrake: "springBrakeApplied" };
        const judged = ({ chamber, released, applied, engine: _engine, springBrake: _spring, ...options }) =>
            rt.judge(chamber, released, applied, options);
        for (const base of bases) {
            const before = verdictOf(() => judged(base));
            for (const entry of Object.keys(SOUND).filter((name) => conditions[name] === undefined)) {
                const row = ENTRIES.get(`reading ${entry}`);
                for (const [text, how] of damages(row.kind)) {
                    const after = verdictOf(() => judged({ ...base, [entry]: text }));
                    const said = `${entry} ${JSON.stringify(text)}: ${before} became ${after}`;
                    if (how === "unreadable") assert.equal(after, null, said);
                    expect(row, how, before, after, said);
                }
            }
        }
        for (const name of Object.values(conditions)) refused(() => rt.judge("30", "2", "4", { [name]: "off" }));
    },

    whatIsNoText() {
        for (const entry of Object.keys(SOUND)) {
            for (const wrong of OBJECTS) {
                // An object without members is a chamber of which nothing is known.
                if (entry === "chamber" && wrong?.constructor === Object) continue;
                refused(() => rt.judgeRow({ ...SOUND, [entry]: wrong }));
                const table = Object.fromEntries(Object.entries(SOUND).map(([name, text]) => [name, [text, text]]));
                refused(() => rt.judgeColumns({ ...table, [entry]: [SOUND[entry], wrong] }));
            }
        }
    },

    /** A brake that is damaged, left out or there twice. */
    vehicles() {
        const positions = ["1L", "1R", "2L", "2R"];
        const finding = (cells) => rt.judgeRow({ ...SOUND, ...cells }).finding;
        for (const patterns of [
            [GOOD, AT, GOOD, GOOD],
            [OVER, AT, GOOD, GOOD],
            [DEAD, AT, GOOD, GOOD],
            ["?", AT, GOOD, GOOD],
        ]) {
            const ends = patterns.map((applied, i) => ({ position: positions[i], finding: finding({ applied }) }));
            const before = rt.judgeVehicle(ends);
            const noBetter = (after) => {
                assert.ok(
                    after.count.worstShare.compare(before.count.worstShare) >= 0 &&
                        after.inAdjustment <= before.inAdjustment,
                );
                assert.ok(after.count.outcome !== "below-criterion" || before.count.outcome === "below-criterion");
            };
            ends.forEach((end, place) => {
                noBetter(rt.judgeVehicle(ends.filter((other) => other !== end)));
                refused(() => rt.judgeVehicle([...ends, end]));
                for (const cells of [
                    { released: "x" },
                    { applied: null },
                    { chamber: "?" },
                    { psi: "lots" },
                    { unit: "ft" },
                ]) {
                    const damaged = { ...end, finding: finding({ applied: patterns[place], ...cells }) };
                    noBetter(rt.judgeVehicle(ends.map((other) => (other === end ? damaged : other))));
                }
            });
            for (const brakes of [-1, 3, 0.5, "4", true, NaN]) refused(() => rt.judgeVehicle(ends, { brakes }));
        }
    },

    airChecks() {
        const [favourable, names] = [["good", "noted"], { towed: "towedUnits" }];
        for (const row of rows("air_edges.csv")) {
            const given = Object.fromEntries(
                Object.entries(row)
                    .filter(([name, text]) => text !== "" && !["result", "at_limit", "source", "check"].includes(name))
                    .map(([name, text]) => [names[name] ?? camel(name), text]),
            );
            const before = rt.judgeAir(row.check, given).result;
            assert.equal(before, row.result, JSON.stringify(row));
            for (const name of Object.keys(given).filter((each) => each !== "rules")) {
                const after = rt.judgeAir(row.check, { ...given, [name]: null }).result;
                assert.ok(
                    !favourable.includes(after) ||
                        favourable.includes(before) ||
                        ENTRIES.get(`air ${name}`).absence !== "",
                    `${name} of ${JSON.stringify(row)}`,
                );
            }
        }
        const options = [...ENTRIES.keys()]
            .filter((key) => key.startsWith("air ") && key !== "air check")
            .map((key) => key.slice(4));
        for (const name of options) {
            for (const wrong of OBJECTS.filter((each) => !(name === "answer" && each === true))) {
                refused(() => rt.judgeAir("warning", { [name]: wrong }));
            }
        }
        for (const name of ["pressure", "before", "after", "cutOut", "cutIn", "seconds"]) {
            for (const [text, how] of damages(ENTRIES.get(`air ${name}`).kind)) {
                if (how === "unreadable")
                    refused(() => rt.judgeAir("loss-applied", { before: "100", after: "99", [name]: text }));
            }
        }
    },
});
