// SPDX-License-Identifier: Apache-2.0
// A program that the compiler of TypeScript must accept, and mistakes that it must find.
import {
    Answers,
    catalogue,
    Finding,
    Fraction,
    identify,
    judge,
    judgeAir,
    judgeColumns,
    judgeRow,
    judgeVehicle,
    loadRules,
    Plan,
    readLength,
    RodtravelError,
    ruleSet,
    steps,
} from "rodtravel";
import type { Chamber, Limit, Reason, Verdict } from "rodtravel";

const finding: Finding = judge("30L", "2 3/4", new Fraction(85, 16), { psi: 95n, division: "1/16" });
const verdict: Verdict = finding.verdict;
const reasons: readonly Reason[] = finding.reasons;
const margin: Fraction | null = finding.margin;
const chamber: Chamber = finding.chamber;
const row: Limit | null = finding.lawRow;
const texts: string[] = [finding.sentence, ...finding.sentences, catalogue("fr").say(finding), String(readLength("2"))];
const vehicle = judgeVehicle([{ position: "1L", finding, adjuster: "manual", armLength: "5 1/2" }], { brakes: 6 });
const sentence: string | undefined = vehicle.axles[0]?.remarks[0]?.sentence;
const answers: Answers = judgeColumns({
    chamber: ["30", null],
    released: ["2", 2],
    applied: { offsets: Int32Array.of(0, 1, 1), data: new Uint8Array(1) },
});
const counted: number = answers.counts()["in-adjustment"];
const plan = new Plan(ruleSet("us-fmcsr"), { drum: "hot" }).judge({
    released: new Int32Array(1),
    applied: new Int32Array(1),
    chamber: new Uint8Array(1),
});
const { error } = judgeRow({ chamber, released: "2" });
if (error instanceof RodtravelError && error.status === "date-cell") texts.push(error.field ?? "");
texts.push(
    judgeAir("warning", { pressure: "62 psi" }).edge,
    steps()[0]?.title ?? "",
    loadRules("").id,
    identify({ stamp: "30" }).advice,
);
console.log(verdict, reasons, margin, row, sentence, counted, plan.length, texts);

// @ts-expect-error a verdict is a word of the library
const wrong: Verdict = "fine";
// @ts-expect-error there is no such option
judge("30", "2", "4", { Psi: 95 });
// @ts-expect-error a check is a word of the library
judgeAir("warnings");
// @ts-expect-error a finding is frozen
finding.verdict = "inoperative";
// @ts-expect-error a Finding is made by judge
new Finding();
console.log(wrong);
