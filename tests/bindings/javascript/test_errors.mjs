// SPDX-License-Identifier: Apache-2.0
// What is refused, how, and that nothing is dropped on the way.
import assert from "node:assert/strict";
import { rt, run, thrown } from "./tap.mjs";

function refused(call, parts) {
    const error = thrown(call);
    assert.ok(error instanceof rt.RodtravelError && error instanceof Error, error.stack);
    for (const [name, value] of Object.entries(parts)) assert.equal(error[name], value, `${name}: ${error.message}`);
    assert.ok(error.message.endsWith(error.text) && error.text !== "");
    return error;
}

const mistaken = (call, words) => {
    const error = thrown(call);
    assert.ok(error instanceof TypeError, error.stack);
    assert.match(error.message, words);
};

run({
    textsThatCannotBeRead() {
        const error = refused(() => rt.judge("30", "2 1/8", "2-Jan"), {
            status: "date-cell",
            field: "applied",
            column: 1,
            line: null,
            index: null,
            name: "RodtravelError",
        });
        assert.equal(error.message, "applied, column 1: this is a date; a spreadsheet makes dates of fractions");
        refused(() => rt.judge("30", "2 1/8", "4", { psi: 95, psiAfter: "x" }), {
            field: "psiAfter",
            status: "syntax",
        });
        refused(() => rt.judge("30", "2 1/8", "4", { strokeClass: "wide" }), {
            field: "strokeClass",
            status: "syntax",
        });
        refused(() => rt.judge("30", "2 1/8", ""), { field: "applied", status: "empty" });
        refused(() => rt.judge("30", "2 1/8", null), { field: "applied", status: "empty" });
        refused(() => rt.judge("30", "2 1/8", "4", { date: "06/05/2024" }), { field: "date", status: "ambiguous" });
        refused(() => rt.readChamber("B"), { status: "unknown-chamber", column: 1, field: "chamber" });
        refused(() => rt.readLength("1,750"), { status: "ambiguous" });
        refused(() => rt.readDate("06/05/2024"), { status: "ambiguous" });
        refused(() => rt.readPressure("900"), { status: "implausible" });
        refused(() => rt.readPosition("0L"), { status: "implausible" });
        refused(() => rt.judgeAir("warning", { pressure: "60 mm" }), { field: "pressure", status: "unit" });
        refused(() => rt.judgeAir("", {}), { field: "check", status: "empty" });
        refused(() => rt.identify({}), { status: "argument" });
        refused(() => rt.identify({ diameter: "0" }), { field: "diameter" });
    },

    binaryFloats() {
        for (const float of [2.125, NaN, Infinity, -0.5, 2 ** 60]) {
            mistaken(() => rt.judge("30", float, "4"), /released is a binary float/);
            mistaken(() => rt.judge("30", "2", "4", { psi: float }), /psi is a binary float/);
            mistaken(() => rt.judgeRow({ chamber: "30", released: float, applied: "4" }), /released is a binary float/);
            mistaken(
                () => rt.judgeColumns({ chamber: ["30"], released: [float], applied: ["4"] }),
                /released is a binary float/,
            );
            mistaken(() => rt.roundLength(float, "1/16"), /length is a binary float/);
            mistaken(() => rt.judgeAir("warning", { pressure: float }), /pressure is a binary float/);
            mistaken(() => rt.identify({ stamp: "30", diameter: float }), /diameter is a binary float/);
            mistaken(() => rt.readChamber({ size: "30", ratedStroke: float }), /ratedStroke is a binary float/);
            mistaken(() => new rt.Plan("us-fmcsr", { psi: float }), /pressure is a binary float/);
            mistaken(() => new rt.Fraction(float), /binary float/);
            mistaken(() => rt.requiredVolume(float), /binary float/);
        }
        const floats = { released: new Float64Array([2]), applied: new Int32Array([3]), chamber: new Uint8Array([2]) };
        mistaken(() => new rt.Plan().judge(floats), /Int32Array/);
    },

    wholeAndExactNumbers() {
        const texts = rt.judge("30", "2", "4 1/8", { psi: "95", division: "1/16" });
        for (const [two, four, psi] of [
            [2, new rt.Fraction(33, 8), 95],
            [2n, { num: 66n, den: 16n }, 95n],
        ]) {
            assert.deepEqual(rt.judge("30", two, four, { psi, division: new rt.Fraction(1, 16) }), texts);
        }
        // A third is on no tape; an exact number has no lost blank.
        refused(() => rt.judge("30", new rt.Fraction(1, 3), "4"), { field: "released" });
        assert.equal(rt.judge("30", "1", new rt.Fraction(31, 8)).reasons.includes("lost-blank"), false);
        assert.equal(
            String(rt.judge("30", new rt.Fraction(17, 8), "4,125", { decimalComma: true }).appliedStroke),
            "2",
        );
    },

    otherTypes() {
        mistaken(() => rt.judge(30, "2", "4"), /readChamber/);
        mistaken(() => rt.judge("30", true, "4"), /released is a whole number/);
        mistaken(() => rt.judge("30", ["2"], "4"), /released/);
        mistaken(() => rt.judge("30", "2", "4", { date: new Date() }), /date is text/);
        mistaken(() => rt.judge("30", "2", "4", { engineRunning: 1 }), /true, false or null/);
        mistaken(() => rt.judge("30", "2", "4", { rules: 5 }), /rules are/);
        mistaken(() => rt.ruleSet("us-fmcsr").findLimit("30", new Date()), /moment/);
        mistaken(() => rt.readLength(2), /text is text/);
        mistaken(() => rt.judgeAir("warning", { answer: 1 }), /true, false or null/);
        mistaken(() => rt.judgeVehicle([{ position: "1L", finding: {} }]), /not a copy/);
        mistaken(() => rt.catalogue("fr").say({ ...rt.judge("30", "2", "4") }), /not a copy/);
        mistaken(() => new rt.Rules(), /made by ruleSet/);
    },

    /** A slip of the keys must not drop a pressure. */
    unknownOptions() {
        mistaken(() => rt.judge("30", "2", "4", { Psi: 60 }), /no option Psi/);
        mistaken(() => rt.judge("30", "2", "4", { psi_after: 60 }), /no option psi_after/);
        mistaken(() => rt.judgeRow({ chamber: "30", relased: "2" }), /no option relased/);
        mistaken(() => rt.judgeAir("warning", { pressures: 60 }), /no option pressures/);
        mistaken(() => rt.identify({ stamped: "30" }), /no option stamped/);
        mistaken(() => rt.readChamber({ size: "30", class: "long" }), /no option class/);
        mistaken(
            () => rt.judgeVehicle([{ position: "1L", finding: rt.judge("30", "2", "4"), arm: "5 1/2" }]),
            /no option arm/,
        );
        mistaken(() => rt.judgeColumns({}, { rule: "us-fmcsr" }), /no option rule/);
    },

    words() {
        refused(() => rt.judge("30", "2", "4", { rules: "atlantis" }), { status: "unknown-rules", field: "rules" });
        refused(() => rt.judge("30", "2", "4", { unit: "ft" }), { field: "unit" });
        refused(() => rt.identify({ stamp: "30", port: "oval" }), { field: "port" });
        refused(() => rt.judgeAir("warnings", {}), { field: "check", status: "syntax" });
        refused(() => rt.catalogue("tlh"), { field: "language" });
        assert.throws(() => rt.words("rodt_nothing"), RangeError);
    },

    /** A text with a zero byte is never cut there, and half of a character never disappears. */
    strangeTexts() {
        for (const strange of ["2\0", "\0", "2 1/8\0 9", "2\ud800", "\udc00"]) {
            refused(() => rt.judge("30", strange, "4"), { field: "released" });
            refused(() => rt.judge(`30${strange}`, "2", "4"), { field: "chamber" });
            refused(() => rt.readLength(strange), {});
            const { finding, error } = rt.judgeRow({ chamber: "30", released: strange, applied: "4" });
            assert.deepEqual([finding.verdict, error.field], ["undetermined", "released"]);
            const answer = rt.judgeColumns({ chamber: ["30"], released: [strange], applied: ["4"] }).at(0);
            assert.deepEqual(answer.reasons, finding.reasons);
        }
        refused(() => rt.readLength("1".repeat(1e6)), {});
        assert.equal(
            rt.judgeRow({ chamber: "30", released: "2".repeat(1e6), applied: "4" }).finding.verdict,
            "undetermined",
        );
    },

    rowsAreNeverRefused() {
        const { finding, error } = rt.judgeRow({ chamber: "30", released: "2 1/8", applied: "2-Jan", psi: "?" });
        assert.deepEqual([finding.verdict, error.field, error.status], ["undetermined", "applied", "date-cell"]);
        assert.equal(rt.judgeRow({ chamber: "30", released: "2", applied: "4" }).error, null);
        assert.equal(rt.judgeRow({}).error.status, "empty");
        const fields = rt
            .rowErrors({ chamber: "30", released: "2x", psi: "?", date: "06/05/2024" })
            .map((each) => each.field);
        assert.deepEqual(fields, ["released", "applied", "psi", "date"]);
        assert.deepEqual(rt.rowErrors({ chamber: "30", released: "2", applied: "4" }), []);
    },

    tablesOfACarrier() {
        const head = "family,size,class,limit\n";
        refused(() => rt.loadRules(`${head}clamp,30,standard,2 1/8\n`), {
            status: "laxer",
            line: 2,
            column: 19,
            field: "limit",
        });
        refused(() => rt.loadRules("family,size\n"), { status: "table" });
        refused(() => rt.loadRules(`${head}clamp,30,standard,1 7/8\n`, { name: "us-fmcsr" }), {
            field: "name",
            status: "argument",
        });
        refused(() => rt.loadRules("", {}), { status: "table" });
        mistaken(() => rt.loadRules(5), /text is text/);
    },

    wheelEndsOfAVehicle() {
        const finding = rt.judge("30", "2", "4");
        const left = { position: "1L", finding };
        refused(() => rt.judgeVehicle([left, left]), { index: 1, line: null });
        refused(() => rt.judgeVehicle([left, { position: "x", finding }]), { index: 1, field: "position" });
        refused(() => rt.judgeVehicle([left, { position: "1R", finding, armLength: "long" }]), {
            index: 1,
            field: "armLength",
        });
        refused(
            () => rt.judgeVehicle([left, { position: "1R", finding: rt.judge("30", "2", "4", { rules: "ca-on" }) }]),
            { index: 1 },
        );
        refused(() => rt.judgeVehicle([]), { field: "count", index: null });
        refused(() => rt.judgeVehicle([left], { brakes: 0 }), { field: "brakes" });
        refused(() => rt.judgeVehicle([left, { position: "1R", finding }], { brakes: 1 }), { field: "brakes" });
        refused(() => rt.judgeTally({ brakes: 1, full: 2 }), { field: "tally" });
        refused(() => rt.judgeTally({ brakes: -1 }), { field: "brakes" });
    },

    inOtherLanguages() {
        const error = thrown(() => rt.judge("30", "2 1/8", "2-Jan"));
        assert.equal(rt.catalogue("fr").say(error), "ceci est une date; un tableur change les fractions en dates");
        assert.notEqual(rt.catalogue("es").say(error), error.text);
        // What this package says itself is in English.
        assert.match(rt.catalogue("fr").say(thrown(() => rt.ruleSet("atlantis"))), /there is no rule set/);
    },
});
