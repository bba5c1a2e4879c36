// SPDX-License-Identifier: Apache-2.0
// Rule sets: one authority's limits, dated, each row with its source; and a carrier's own limits on top of one.
import { putChamber, rowsOf } from "./chambers.mjs";
import { DEFAULT_RULES } from "./constants.mjs";
import { dateAt, enumeration, exactAt, layout } from "./describe.mjs";
import { checked, refuse, textFrom } from "./error.mjs";
import { c, putText, scratch, setUint32, take, textAt, textPointer, uint32At, written } from "./memory.mjs";
import { onlyKnown, putDate, putExact, textOnly } from "./values.mjs";

const LIMIT = layout("rodt_limit");
const AIR_LIMIT = layout("rodt_air_limit");
const SOURCE = layout("rodt_source");
const LIMIT_ANSWER = layout("rodt_limit_answer");
const evidences = enumeration("rodt_evidence");
const madeHere = Symbol("made by ruleSet or loadRules");
const loaded = new FinalizationRegistry((at) => c.rodt_rules_unref(at));
const pointers = new WeakMap();
const compiledIn = new Map();

const sourceAt = (at) => SOURCE.readConstant(at);

function pressureFrom(call, rules) {
    return scratch(() => {
        const out = putExact(null);
        call(out, rules);
        return exactAt(out);
    });
}

function dayFrom(call, rules) {
    return scratch(() => {
        const out = putDate(null);
        call(out, rules);
        return dateAt(out);
    });
}

/** The pointer to a rule set. Whoever keeps it, keeps the object. */
export const rulesPointer = (rules) => pointers.get(rules);

/** The law of one authority, or a carrier's own limits on top of a law. Made by ruleSet and loadRules. */
export class Rules {
    constructor(made, at) {
        if (made !== madeHere) throw new TypeError("a Rules is made by ruleSet and loadRules");
        pointers.set(this, at);
        Object.freeze(this);
    }

    get id() {
        return textAt(c.rodt_rules_id(rulesPointer(this)));
    }
    get title() {
        return textAt(c.rodt_rules_title(rulesPointer(this)));
    }
    get authority() {
        return textAt(c.rodt_rules_authority(rulesPointer(this)));
    }
    get source() {
        return sourceAt(c.rodt_rules_source(rulesPointer(this)));
    }
    get evidence() {
        return evidences.wordOf(c.rodt_rules_evidence(rulesPointer(this)));
    }
    get from() {
        return dayFrom(c.rodt_rules_from, rulesPointer(this));
    }
    get until() {
        return dayFrom(c.rodt_rules_until, rulesPointer(this));
    }

    /** The Rules that a carrier's own limits are based on; null for a law. */
    get law() {
        return lawAt(c.rodt_rules_law(rulesPointer(this)));
    }
    get airLaw() {
        return lawAt(c.rodt_rules_air_law(rulesPointer(this)));
    }

    /** True if a stroke exactly at the limit passes. */
    get atLimitPasses() {
        return c.rodt_rules_at_limit_passes(rulesPointer(this)) !== 0;
    }

    /** Reservoir pressure for the stroke test in psi, both ends inside: [from, until]; null = there is none. */
    get pressureWindow() {
        const at = rulesPointer(this);
        const from = pressureFrom(c.rodt_rules_pressure_from, at);
        return from === null ? null : Object.freeze([from, pressureFrom(c.rodt_rules_pressure_until, at)]);
    }

    get pressureSource() {
        return sourceAt(c.rodt_rules_pressure_source(rulesPointer(this)));
    }
    get pressureEvidence() {
        return evidences.wordOf(c.rodt_rules_pressure_evidence(rulesPointer(this)));
    }

    /** The text that calls a brake over its limit a major defect; null = it has no rank. */
    get majorSource() {
        return sourceAt(c.rodt_rules_major_source(rulesPointer(this)));
    }

    /** The part of the marked rated stroke that limits an actuator which is in no table; null = nothing said. */
    get ratedShare() {
        return pressureFrom(c.rodt_rules_rated_share, rulesPointer(this));
    }

    /** The rows of limits; of a carrier's limits its own rows only. */
    get limits() {
        const at = rulesPointer(this);
        return rowsOf(LIMIT, c.rodt_rules_limit_count(at), (i) => c.rodt_rules_limit_at(at, i));
    }

    /** The rows of air checks, likewise; `edge` says what each calls defective. */
    get airLimits() {
        const at = rulesPointer(this);
        const pointers = Array.from({ length: c.rodt_rules_air_count(at) }, (_, i) => c.rodt_rules_air_at(at, i));
        return Object.freeze(
            pointers.map((row) => Object.freeze({ ...AIR_LIMIT.readConstant(row), edge: edgeOf(row) })),
        );
    }

    /** The limit for a chamber on a day, and what it is based on; without a day by the newest text. */
    findLimit(chamber, day = null) {
        return scratch(() => {
            const [of, on, out] = [putChamber(chamber), putDate(day, "day"), LIMIT_ANSWER.take()];
            checked((error) => c.rodt_rules_find_limit(rulesPointer(this), of, on, out, error));
            return LIMIT_ANSWER.read(out);
        });
    }

    toString() {
        return this.id;
    }
    toJSON() {
        return this.id;
    }
}

const edgeOf = (row) => textFrom(written((...room) => c.rodt_air_limit_edge_format(row, ...room)));

function lawAt(at) {
    return at === 0 ? null : ruleSet(textAt(c.rodt_rules_id(at)));
}

/** The compiled-in Rules of an id, "us-fmcsr", "us-periodic", "ca-on", "us-cdl" ...; a Rules is given back. */
export function ruleSet(id = DEFAULT_RULES) {
    if (id instanceof Rules) return id;
    if (typeof id !== "string") throw new TypeError("rules are a Rules, or the id of a rule set as text");
    let known = compiledIn.get(id);
    if (known === undefined) {
        const at = scratch(() => c.rodt_rules_find(textPointer(id)));
        if (at === 0) refuse("unknown-rules", `there is no rule set "${id}"; ruleSets() lists them`, "rules");
        compiledIn.set(id, (known = new Rules(madeHere, at)));
    }
    return known;
}

/** All compiled-in Rules. */
export function ruleSets() {
    return Object.freeze(Array.from({ length: c.rodt_rules_count() }, (_, i) => lawAt(c.rodt_rules_at(i))));
}

/**
 * A carrier's own limits, based on a law: a Rules. `text` is a table in the format of tables/limits.csv, one of air
 * checks in the format of tables/aircheck.csv, or both one below the other. Every row must be at least as strict as the
 * law; otherwise a RodtravelError says line and column.
 */
export function loadRules(text, options = {}) {
    const { name = "own limits", law, airLaw = law } = onlyKnown(options, ["name", "law", "airLaw"], "loadRules");
    return scratch(() => {
        const [out, { at, size }] = [take(4), putText(textOnly(text, "text"))];
        const laws = [law, airLaw].map((each) => rulesPointer(ruleSet(each)));
        const called = textPointer(textOnly(name, "name"));
        checked((error) => c.rodt_rules_load_with_air(...laws, called, at, size, out, error));
        const made = new Rules(madeHere, uint32At(out));
        loaded.register(made, uint32At(out));
        return made;
    });
}

/** A source as one line: "49 CFR Part 393, 393.47(e)(1), text as amended by 86 FR 57076"; "" for null. */
export function writeSource(source) {
    if (source === null) return "";
    return scratch(() => {
        const at = SOURCE.take();
        for (const { name, offset } of SOURCE.values) setUint32(at + offset, textPointer(source[name] ?? ""));
        return textFrom(
            written((...room) => c.rodt_source_format(at, ...room)),
            "source",
        );
    });
}
