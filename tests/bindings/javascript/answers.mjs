// SPDX-License-Identifier: Apache-2.0
// The answers that the package gives to questions of the conformance kit (tests/conformance), in Node and in a browser.

const exact = (value) => (value === null ? null : value.den === 1n ? `${value.num}` : `${value.num}/${value.den}`);
const snake = (name) => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
const camel = (question) =>
    Object.fromEntries(
        Object.entries(question).map(([name, value]) => [
            name.replace(/_(\w)/g, (_, letter) => letter.toUpperCase()),
            value,
        ]),
    );

// A reader of one text has no field; here it is called as its argument.
const errorOf = (error, field = error?.field) =>
    error && { status: error.status, field: snake(field ?? ""), column: error.column ?? 0 };

const asked = (rt) => ({
    "wheel-end"(question) {
        const { finding, error } = rt.judgeRow(camel(question));
        return {
            verdict: finding.verdict,
            stroke: exact(finding.appliedStroke),
            limit: exact(finding.limit),
            margin: exact(finding.margin),
            proof: finding.proof,
            probability_over: exact(finding.probabilityOver),
            reasons: finding.reasons,
            error: errorOf(error),
        };
    },
    length: ({ text }) => ({ value: exact(rt.readLength(text)) }),
    chamber({ text }) {
        const { family, size, springSize, strokeClass } = rt.readChamber(text);
        return { family, size: size ?? "", spring_size: springSize ?? "", stroke_class: strokeClass };
    },
    count(question) {
        const found = rt.judgeTally(
            Object.fromEntries(Object.entries(question).map(([name, text]) => [name, Number(text)])),
        );
        return { outcome: found.outcome, share: exact(found.share) };
    },
    air({ check, ...question }) {
        const finding = rt.judgeAir(check, camel(question));
        return { result: finding.result, at_limit: finding.atLimit ? "yes" : "no" };
    },
});
const SINGLE = ["length", "chamber"];

/** The function that answers a question, by the package. */
export function judgeOf(rt) {
    const by = asked(rt);
    return ({ id, ask, ...question }) => {
        try {
            return { id, error: null, ...by[ask](question) };
        } catch (error) {
            if (!(error instanceof rt.RodtravelError)) throw error;
            return { id, error: errorOf(error, SINGLE.includes(ask) ? "" : error.field) };
        }
    };
}
