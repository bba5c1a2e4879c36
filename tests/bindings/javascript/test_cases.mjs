// SPDX-License-Identifier: Apache-2.0
// The case files of the C tests, read by JavaScript: the answers are the same.
import assert from "node:assert/strict";
import { exact, rows, rt, run, thrown } from "./tap.mjs";

const same = (found, text, id) => assert.equal(String(found), String(exact(text)), id);
const cases = (name) => {
    const found = rows(name);
    assert.ok(found.length > 8, name);
    return found;
};

const judgeWheelEnd = (row) =>
    rt.judgeRow({
        chamber: row.chamber_text,
        strokeClass: row.stroke_class,
        ratedStroke: row.rated_stroke_in,
        date: row.as_of,
        rules: row.ruleset,
        released: row.released,
        applied: row.applied,
        psi: row.psi,
    });

function attempt(call) {
    try {
        return [call(), null];
    } catch (error) {
        assert.ok(error instanceof rt.RodtravelError, error.stack);
        return [null, error];
    }
}

run({
    spellings() {
        for (const row of cases("spellings.csv")) {
            const [value, error] = attempt(() => rt.readLength(row.text));
            if (error !== null) {
                assert.notEqual(row.expect, "accept", `${row.id}: ${error.message}`);
                assert.ok(error.text !== "" && error.status !== "internal");
                continue;
            }
            assert.notEqual(row.expect, "refuse", row.id);
            if (row.value_in !== "") same(value, row.value_in, row.id);
            assert.ok(rt.readLength(rt.writeLength(value)).equals(value), row.id);
        }
    },

    chamberMarks() {
        const words = { unknown: "unknown-chamber", date: "date-cell" };
        for (const row of cases("chamber_marks.csv")) {
            const [chamber, error] = attempt(() => rt.readChamber(row.mark));
            if (error !== null) {
                assert.equal(error.column ?? 0, Number(row.column), row.mark);
                assert.equal(error.status, words[row.outcome] ?? row.outcome, row.mark);
                continue;
            }
            assert.equal(row.outcome, "ok", row.mark);
            assert.deepEqual(
                [chamber.family, chamber.size ?? "", chamber.springSize ?? "", chamber.strokeClass],
                [row.family, row.size, row.spring, row.class],
                row.mark,
            );
        }
    },

    wheelEnds() {
        for (const row of cases("wheel_ends.csv")) {
            const { finding } = judgeWheelEnd(row);
            assert.equal(finding.verdict, row.expect_verdict, row.id);
            if (row.expect_stroke_in !== "") same(finding.appliedStroke, row.expect_stroke_in, row.id);
            if (row.expect_limit_in !== "") same(finding.limit, row.expect_limit_in, row.id);
        }
    },

    /** judge gives the same as judgeRow wherever it does not refuse. */
    wheelEndsStrictly() {
        let judged = 0;
        for (const row of cases("wheel_ends.csv")) {
            const lenient = judgeWheelEnd(row);
            const [strict, refusal] = attempt(() =>
                rt.judge(row.chamber_text, row.released, row.applied, {
                    strokeClass: row.stroke_class,
                    ratedStroke: row.rated_stroke_in,
                    date: row.as_of,
                    rules: row.ruleset,
                    psi: row.psi,
                }),
            );
            if (refusal !== null) {
                const parts = ({ status, field, text, column }) => ({ status, field, text, column });
                assert.deepEqual(parts(refusal), parts(lenient.error ?? refusal), row.id);
                continue;
            }
            assert.deepEqual({ ...strict }, { ...lenient.finding }, row.id);
            assert.equal(lenient.error, null);
            judged++;
        }
        assert.ok(judged > 40);
    },

    wheelEndsInColumns() {
        const all = cases("wheel_ends.csv");
        for (const rules of new Set(all.map((row) => row.ruleset))) {
            const some = all.filter((row) => row.ruleset === rules);
            const column = (name) => some.map((row) => row[name]);
            const answers = rt.judgeColumns(
                {
                    chamber: column("chamber_text"),
                    strokeClass: column("stroke_class"),
                    ratedStroke: column("rated_stroke_in"),
                    date: column("as_of"),
                    released: column("released"),
                    applied: column("applied"),
                    psi: column("psi"),
                },
                { rules },
            );
            some.forEach((row, i) => {
                const { finding } = judgeWheelEnd(row);
                const answer = answers.at(i);
                assert.deepEqual(
                    [answer.verdict, answer.reasons, String(answer.appliedStroke)],
                    [finding.verdict, finding.reasons, String(finding.appliedStroke)],
                    row.id,
                );
            });
        }
    },

    spellingsInColumns() {
        const texts = cases("spellings.csv").map((row) => row.text);
        const alike = (text) => texts.map(() => text);
        const answers = rt.judgeColumns({ chamber: alike("30"), released: alike("1"), applied: texts });
        texts.forEach((text, i) => {
            const { finding } = rt.judgeRow({ chamber: "30", released: "1", applied: text });
            assert.deepEqual([answers.at(i).verdict, answers.at(i).reasons], [finding.verdict, finding.reasons], text);
        });
    },

    lawCellByCell() {
        for (const row of cases("us-393-47.csv")) {
            const strokeClass = ["standard", "long"].includes(row.class) ? row.class : "unknown";
            const ratedStroke = row.rated_note.split("-inch")[0] || null;
            const chamber = { size: row.size, family: row.family, strokeClass, ratedStroke };
            const answer = rt.ruleSet("us-fmcsr").findLimit(chamber, row.until || row.from);
            assert.ok(answer.limit.equals(rt.readLength(row.limit_in)), row.size);
            assert.deepEqual([answer.lawRow.published, answer.evidence], [row.limit_in, "checked"]);
        }
    },

    vehicles() {
        const words = { yes: "out-of-service", no: "below-criterion", ambiguous: "ambiguous" };
        for (const row of cases("vehicles.csv")) {
            const [brakes, full, half] = [row.brakes, row.full_defects, row.half_defects].map(Number);
            const count = rt.judgeTally({ brakes, full, half }, { brakes });
            same(count.share.multiply(100), row.expect_percent, row.id);
            assert.equal(count.outcome, words[row.expect_out_of_service], row.id);
        }
    },

    /** The same counts, from brakes that were judged. */
    vehiclesFromFindings() {
        const stroke = { full: "4 1/4", half: "4 1/8", none: "3" };
        for (const row of cases("vehicles.csv")) {
            const [brakes, full, half] = [row.brakes, row.full_defects, row.half_defects].map(Number);
            const kinds = [
                ...Array(full).fill("full"),
                ...Array(half).fill("half"),
                ...Array(brakes - full - half).fill("none"),
            ];
            const ends = kinds.map((kind, i) => ({
                position: `${1 + (i >> 1)}${"LR"[i % 2]}`,
                finding: rt.judge("30", "2", stroke[kind]),
            }));
            const found = rt.judgeVehicle(ends);
            same(found.count.share.multiply(100), row.expect_percent, row.id);
            assert.deepEqual([found.outOfAdjustment, found.inAdjustment], [full + half, brakes - full - half]);
            const tally = kinds.reduce((sum, _, i) => rt.addToTally(sum, ends[i].finding), {});
            assert.deepEqual(tally, { ...found.count.tally });
        }
    },

    airEdges() {
        for (const row of cases("air_edges.csv")) {
            const answer = { "": null, yes: true, no: false }[row.answer];
            const options = {
                rules: row.rules,
                answer,
                towedUnits: Number(row.towed),
                applications: Number(row.applications),
            };
            for (const [name, column] of Object.entries({
                vehicle: "vehicle",
                span: "span",
                pressure: "pressure",
                before: "before",
                after: "after",
                cutOut: "cut_out",
                built: "built",
            })) {
                if (row[column] !== "") options[name] = row[column];
            }
            for (const [name, column] of Object.entries({
                seconds: "seconds",
                actualVolume: "actual_volume",
                requiredVolume: "required_volume",
            })) {
                if (row[column] !== "") options[name] = exact(row[column]);
            }
            const finding = rt.judgeAir(row.check, options);
            assert.deepEqual(
                [finding.result, finding.atLimit],
                [row.result, row.at_limit === "yes"],
                `${JSON.stringify(row)}: ${finding}`,
            );
        }
    },

    ratedVolumes() {
        const found = cases("us-571-121-table-v.csv");
        assert.equal(found.length, rt.volumeRows().length);
        for (const row of found) assert.equal(String(rt.ratedVolume(row.type)), row.volume);
        assert.equal(thrown(() => rt.ratedVolume("bolt C")).status, "unknown-chamber");
    },
});
