// SPDX-License-Identifier: Apache-2.0
// Values: exact, frozen, the same as the library's; sentences, rule sets, identification, steps, languages.
import assert from "node:assert/strict";
import { rt, run, thrown } from "./tap.mjs";

const half = new rt.Fraction(1, 2);

run({
    fractions() {
        assert.deepEqual([new rt.Fraction(-6, -8), new rt.Fraction(6, -8)].map(String), ["3/4", "-3/4"]);
        assert.deepEqual(
            [new rt.Fraction(15, 8), new rt.Fraction(-9, 8), new rt.Fraction(4), new rt.Fraction(0)].map(String),
            ["1 7/8", "-1 1/8", "4", "0"],
        );
        assert.deepEqual([half.add(1), half.subtract(1n), half.multiply(half), half.divide(4)].map(String), [
            "1 1/2",
            "-1/2",
            "1/4",
            "1/8",
        ]);
        assert.deepEqual([half.compare(1), half.compare(half), half.compare(0)], [-1, 0, 1]);
        assert.ok(half.equals({ num: 2n, den: 4n }) && half.toNumber() === 0.5);
        assert.equal(new rt.Fraction((1n << 70n) + 1n, 2n).toNumber(), 2 ** 69);
        assert.equal(JSON.stringify({ half }), '{"half":"1/2"}');
        assert.throws(() => half < 1, TypeError);
        assert.throws(() => half + half, TypeError);
        assert.throws(() => new rt.Fraction(1, 0), RangeError);
        assert.throws(() => half.divide(0), RangeError);
        assert.throws(() => {
            half.num = 2n;
        }, TypeError);
    },

    findings() {
        const finding = rt.judge("30L", "2 3/4", "5 5/16", { psi: 95, division: "1/16" });
        assert.deepEqual(
            [finding.verdict, finding.reasons, finding.proof],
            ["out-of-adjustment", ["over-limit"], "not-resolved"],
        );
        assert.equal(finding.sentence, "2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16");
        assert.equal(String(finding), finding.sentence);
        assert.equal(finding.sentences[0], "stroke is over the limit by 1/16");
        assert.ok(finding.spoken.startsWith("Released 2 3/4") && finding.proofSentence !== "");
        assert.deepEqual([finding.defect, finding.rules, finding.lawRow.published], ["half", "us-fmcsr", "2 1/2"]);
        assert.equal(rt.writeSource(finding.source), "49 CFR Part 393, 393.47(e)(1), text as amended by 86 FR 57076");
        const report = JSON.parse(finding.json);
        assert.deepEqual([report.verdict, report.margin, report.units.length], ["out-of-adjustment", "-1/16", "in"]);
        assert.equal(JSON.parse(JSON.stringify(finding)).margin, "-1/16");
        assert.equal(finding.lawRow.source, rt.judge("30L", "2", "4").lawRow.source);
        assert.equal(rt.judge("30", "2", "4", { date: "2024-01-10" }).day, "2024-01-10");
    },

    everythingIsFrozen() {
        const seen = new Set();
        const look = (value, path) => {
            if (typeof value !== "object" || value === null || seen.has(value) || ArrayBuffer.isView(value)) return;
            seen.add(value);
            assert.ok(Object.isFrozen(value), path);
            for (const [name, inner] of Object.entries(value)) look(inner, `${path}.${name}`);
        };
        const finding = rt.judge("30", "2", "4 1/8", { psi: "650 kPa" });
        look(finding, "finding");
        look(rt.judgeVehicle([{ position: "1L", finding }]), "vehicle");
        look(rt.judgeAir("warning", { pressure: 50 }), "air");
        look(rt.identify({ stamp: "30" }), "identification");
        look(rt.ruleSet("us-fmcsr").limits, "limits");
        look(rt.steps("us-cdl"), "steps");
        look(rt.criterionParts(), "parts");
    },

    lengths() {
        assert.equal(String(rt.readLength("44.45 mm")), "1 3/4");
        assert.deepEqual(
            rt.readLengthUnit("4.5 cm").map(String),
            ["1 49/64", "cm"].map((text, i) => (i ? text : "1 98/127")),
        );
        assert.equal(String(rt.readLength("44,45", { unit: "mm", decimalComma: true })), "1 3/4");
        assert.equal(rt.writeLength("1.75"), "1 3/4");
        assert.deepEqual(
            [rt.writeDecimal("1 3/4", 2, { unit: "mm" }), rt.writeDecimal(half, 0, { rounding: "half-up" })],
            ["44.45", "1"],
        );
        assert.equal(String(rt.roundLength("1.9", "1/16")), "1 7/8");
        assert.equal(String(rt.roundLength("1.9", "1/16", { rounding: "up" })), "1 15/16");
        assert.equal(String(rt.inchesFromMm(127)), "5");
        assert.equal(rt.writePressure(rt.psiFromKpa(650), { unit: "kpa" }), "650 kPa");
        assert.deepEqual(
            [rt.writePressure("95"), rt.readPressureUnit("655 kPa")[1], rt.readDate("14-OCT-21")],
            ["95", "kpa", "2021-10-14"],
        );
        assert.equal(rt.readDate("06/05/2024", { order: "day-first" }), "2024-05-06");
        assert.equal(thrown(() => rt.inchesFromMm(1n << 64n)).status, "range");
    },

    chambers() {
        const chamber = rt.readChamber("24/30 LS");
        assert.deepEqual(
            { ...chamber },
            {
                family: "clamp",
                strokeClass: "long",
                size: "24",
                springSize: "30",
                ratedStroke: null,
                markedLimit: null,
            },
        );
        assert.equal(rt.writeChamber(chamber), "clamp 24/30 long");
        assert.deepEqual({ ...rt.judge(chamber, "2", "4") }, { ...rt.judge("24/30 LS", "2", "4") });
        assert.equal(rt.judge({ size: "20", ratedStroke: "3" }, "2", "4").lawRow.strokeClass, "long");
        assert.deepEqual([rt.pushrodForce("30", 60), rt.alFactor("30", "5 1/2"), rt.ratedVolume("30")].map(String), [
            "1800",
            "165",
            "89",
        ]);
        assert.ok(rt.chamberRows().length > 20);
        const row = rt.chamberRows().find((each) => each.outsideDiameterMm !== null);
        assert.ok(row.outsideDiameterMm.subtract(row.outsideDiameter.multiply(new rt.Fraction(127, 5))).toNumber() < 1);
    },

    ruleSets() {
        const rules = rt.ruleSet("us-fmcsr");
        assert.deepEqual(
            [rules.id, String(rules.pressureWindow), rules.atLimitPasses, rules.law, String(rules)],
            ["us-fmcsr", "90,100", true, null, "us-fmcsr"],
        );
        assert.ok(rules.limits.length > 20 && rules.title !== "" && rules.authority !== "");
        assert.equal(rt.ruleSet(rules), rules);
        assert.ok(rt.ruleSets().includes(rules) && rt.ruleSets().length > 5);
        assert.equal(String(rules.findLimit("clamp 36", "2021-10-13").limit), "2 1/4");
        const first = rules.limits[0];
        assert.deepEqual([first.published, String(first.limit), String(first.printedMm)], ["1 1/4", "1 1/4", "31 4/5"]);
        assert.equal(String(rt.ruleSet("rated-80").ratedShare), "4/5");
        assert.deepEqual(rt.ruleSet().id, "us-fmcsr");
    },

    ownLimits() {
        const own = rt.loadRules("family,size,class,limit\nclamp,30,standard,1 7/8\n", { name: "yard" });
        const finding = rt.judge("30", "2 1/8", "4 1/16", { rules: own });
        assert.deepEqual(
            [finding.reasons[0], finding.rules, finding.ownRow.published, String(finding.lawLimit)],
            ["over-own-limit", "yard", "1 7/8", "2"],
        );
        assert.deepEqual([own.law.id, own.airLaw.id, own.limits.length], ["us-fmcsr", "us-fmcsr", 1]);
        assert.equal(rt.catalogue("fr").say(finding).includes("1 7/8"), true);
    },

    identification() {
        const found = rt.identify({ stamp: "30", port: "square", diameter: "8 1/8" });
        assert.deepEqual(
            found.candidates.map((each) => rt.writeChamber(each.chamber)),
            ["clamp 30 long"],
        );
        assert.deepEqual(
            [String(found.strictLimit), found.nextObservation, found.withoutLimit],
            ["2 1/2", "nothing", 0],
        );
        assert.equal(rt.identify({ stamp: "30", port: "round" }).nextObservation, "family");
        assert.notEqual(rt.identify({ stamp: "30" }).advice, "");
        assert.equal(JSON.parse(found.json).candidates.length, 1);
        assert.deepEqual(rt.identify({ stamp: { size: "30", ratedStroke: "3" } }).candidates.length > 0, true);
    },

    vehicle() {
        const ends = [
            { position: "1L", finding: rt.judge("20", "2", "3"), adjuster: "manual", armLength: "5 1/2" },
            { position: "1R", finding: rt.judge("24", "2", "3"), armLength: 6 },
            { position: "2L", finding: rt.judge("30", "2", "4 1/4"), adjuster: "automatic" },
        ];
        const vehicle = rt.judgeVehicle(ends, { brakes: 6 });
        assert.deepEqual(
            [vehicle.count.outcome, vehicle.outOfAdjustment, vehicle.count.brakes],
            ["undetermined", 1, 6],
        );
        assert.ok(vehicle.axles[0].mismatches.includes("size-differs"));
        const remark = vehicle.axles[0].remarks[0];
        assert.deepEqual(
            [remark.mismatch, remark.source.section, remark.evidence],
            ["size-differs", "393.47(b)", "checked"],
        );
        assert.deepEqual(
            vehicle.advice.map((each) => each.advice),
            ["none", "none", "find-fault"],
        );
        assert.deepEqual(
            [vehicle.axles[1].right, vehicle.axles[1].left, String(vehicle.axles[0].alLeft)],
            [null, 2, "110"],
        );
        assert.ok(vehicle.json.includes("find-fault") && JSON.parse(vehicle.json) !== null);
        assert.deepEqual(rt.readPosition("3-left"), { axle: 3, side: "left" });
        assert.equal(rt.criterionParts().length, 5);
        const french = rt.catalogue("fr");
        assert.notEqual(french.say(remark), remark.sentence);
        assert.notEqual(french.say(vehicle.count), vehicle.count.sentence);
        assert.notEqual(french.json(vehicle), vehicle.json);
        assert.notEqual(french.advice("find-fault"), vehicle.advice[2].sentence);
    },

    airChecks() {
        const finding = rt.judgeAir("warning", { pressure: 62, rules: "us-cdl" });
        assert.equal(
            String(finding),
            "the low-pressure warning came on at 62 psi; required: not less than 60 psi: good",
        );
        assert.deepEqual([finding.result, String(finding.reading.pressure), finding.note], ["good", "62", ""]);
        assert.equal(
            rt.judgeAir("loss-released", { before: 120, after: 118, vehicle: "single", rules: "us-cdl" }).edge,
            "defective at 2 psi per minute or more",
        );
        assert.equal(rt.judgeAir("warning", { pressure: "450 kPa" }).reading.pressureUnit, "kpa");
        assert.equal(
            rt.judgeAir("build-up", { before: 85, after: 100, seconds: "1:30" }).reading.seconds.equals(90),
            true,
        );
        assert.equal(rt.judgeAir("spring-brake", { answer: false, rules: "us-cdl" }).result, "defective");
        assert.equal(rt.checkTitle("warning"), "low-pressure warning");
        assert.deepEqual(
            [rt.requiredVolume(464), rt.requiredVolume(464, { trailer: true }), rt.buildUpSeconds(11136, 5568)].map(
                String,
            ),
            ["5568", "3712", "50"],
        );
        assert.equal(String(rt.estimateApplication(105, 5568, 464)), "95 103/130");
        assert.equal(rt.estimateApplications(105, 60, 5568, 464), 5);
        assert.equal(thrown(() => rt.buildUpSeconds(0, 1)).field, "volumes");
        const french = rt.catalogue("fr");
        assert.ok(french.spoken(finding).startsWith("L'avertisseur de bas"));
        assert.ok(
            french.edge(finding) !== finding.edge &&
                french.note(finding) === "" &&
                french.json(finding) !== finding.json,
        );
    },

    languages() {
        const finding = rt.judge("30 standard", "2", "4 1/8", { division: "1/16" });
        const french = rt.catalogue("fr_CA.UTF-8");
        assert.equal(french.language, "fr-CA");
        assert.equal(french.say(finding), "de 2 po à 4 1/8 po, course de 2 1/8 po; limite 2 po; dépassement de 1/8 po");
        for (const language of ["fr", "es"]) {
            const of = rt.catalogue(language);
            assert.equal(of.reasons(finding).length, finding.reasons.length);
            assert.ok(of.proof(finding) !== finding.proofSentence && of.spoken(finding) !== finding.spoken);
            assert.ok(of.json(finding) !== finding.json && of.json(rt.identify({ stamp: "30" })) !== "");
            assert.equal(of.steps("ca-on").length, rt.steps("ca-on").length);
        }
        const row = rt.ruleSet("us-cdl").airLimits[0];
        assert.notEqual(french.text(row.published), "");
    },

    steps() {
        const all = rt.steps("ca-on", { vehicle: "single" });
        assert.equal(
            all[3].defective,
            "It would be defective if the warning came on too late (below 55 psi), or did not come " +
                "on at all. That is a major defect.",
        );
        assert.deepEqual(
            rt
                .steps("ca-on")
                .slice(0, 3)
                .map((step) => step.title),
            ["Securing the vehicle", "Draining the reservoirs", "Compressor and belt"],
        );
        assert.equal(all[3].row.check, "warning");
    },

    wordsOfTheLibrary() {
        assert.equal(rt.words("rodt_verdict")["in-adjustment"], "the stroke is within its limit");
        assert.match(rt.version, /^\d+\.\d+\.\d+$/);
        assert.match(rt.tablesEdition, /^\d{4}-\d\d-\d\d$/);
    },
});
