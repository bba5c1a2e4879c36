// SPDX-License-Identifier: Apache-2.0
// Vehicles: positions, the count of defective brakes, mismatched axles, what to do next.
import { BRAKES_MAX } from "./constants.mjs";
import { enumeration, layout } from "./describe.mjs";
import { checked, textFrom, withIndex } from "./error.mjs";
import { putFinding } from "./findings.mjs";
import { bytesOf, keep, keptRecord, partsOf, putKept } from "./kept.mjs";
import { c, copyOf, memory, put, putText, scratch, take, textAt, uint32At, written } from "./memory.mjs";
import { fill, onlyKnown, textOnly, wholeNumber } from "./values.mjs";

const [POSITION, TALLY, COUNT] = ["rodt_position", "rodt_tally", "rodt_count"].map(layout);
const [WHEEL_END, FINDING, AXLE] = ["rodt_wheel_end", "rodt_finding", "rodt_axle_finding"].map(layout);
const [VEHICLE, SOURCE] = ["rodt_vehicle_finding", "rodt_source"].map(layout);
const mismatches = enumeration("rodt_axle_mismatch");
const advices = enumeration("rodt_advice");
const evidences = enumeration("rodt_evidence");

/** Reads "1L", "2 R", "3-left", "essieu 2 gauche", the axle first, as { axle, side }. */
export function readPosition(text) {
    return scratch(() => {
        const [out, { at, size }] = [POSITION.take(), putText(textOnly(text, "text"))];
        checked((error) => c.rodt_position_parse_n(at, size, out, error));
        return POSITION.read(out);
    });
}

// --- The count ----------------------------------------------------------------------------------------------

/** The roadside count of defective brakes, exact: the members of rodt_count. */
export class Count {
    /** The count in one line. */
    get sentence() {
        return scratch(() => {
            const at = putKept(this, "count", "rodt_count");
            return textFrom(written((...room) => c.rodt_count_format(at, ...room)));
        });
    }

    toString() {
        return this.sentence;
    }
}

const countAt = (at) => keptRecord(new Count(), COUNT, at);
const tallyNames = TALLY.values.map((member) => member.name);
const putTally = (tally) => fill(TALLY, TALLY.take(), onlyKnown(tally, tallyNames, "a tally"));

/** Counts one Finding in and gives the tally with it: { brakes, full, half, unknown, inoperative }; {} is none yet. */
export function addToTally(tally, finding) {
    return scratch(() => {
        const [at, of] = [putTally(tally), putFinding(finding)];
        checked((error) => c.rodt_tally_add(at, of, error));
        return TALLY.read(at);
    });
}

function brakesOf(options, what) {
    const { brakes = null } = onlyKnown(options, ["brakes"], what);
    return brakes === null ? 0 : wholeNumber(brakes, "brakes", 1, BRAKES_MAX);
}

/** The Count of a tally, for a vehicle with so many `brakes`, measured or not; without them as many as were counted. */
export function judgeTally(tally, options = {}) {
    const brakes = brakesOf(options, "judgeTally");
    return scratch(() => {
        const [at, out] = [putTally(tally), COUNT.take()];
        checked((error) => c.rodt_tally_judge(at, brakes, out, error));
        return countAt(out);
    });
}

/** What a source says, and how it was checked, by a function that gives both. */
function sourced(call, number) {
    return scratch(() => {
        const evidence = take(4);
        const source = SOURCE.readConstant(call(number, evidence));
        return { source, evidence: evidences.wordOf(uint32At(evidence)) };
    });
}

/** The parts of the roadside criterion: { part, words, source, evidence }. */
export function criterionParts() {
    return Object.freeze(
        [...enumeration("rodt_count_part").word].map(([number, part]) =>
            Object.freeze({
                part,
                words: textAt(c.rodt_count_part_text(number)),
                ...sourced(c.rodt_count_part_source, number),
            }),
        ),
    );
}

// --- The vehicle --------------------------------------------------------------------------------------------

/**
 * The judgement of a vehicle, made by judgeVehicle: the members of rodt_vehicle_finding, and `advice`: for each wheel
 * end { advice, sentence, source, evidence }. Each axle has `remarks`: { mismatch, sentence, source, evidence }.
 */
export class VehicleFinding {
    /** The report as JSON, with the names of `rodtravel vehicle --json`. */
    get json() {
        return vehicleJson(this, 0);
    }

    toString() {
        return this.count.sentence;
    }
}

/** The same with the sentences of a catalogue. */
export function vehicleJson(vehicle, catalogue) {
    const [{ ends, findings, advice }] = partsOf(vehicle, "vehicle");
    return scratch(() => {
        const [at, all] = [putKept(vehicle, "vehicle", "rodt_vehicle_finding"), [ends, findings, advice].map(put)];
        return textFrom(
            written((...room) =>
                c.rodt_vehicle_json_format(
                    at,
                    all[0],
                    ends.length / WHEEL_END.size,
                    all[1],
                    all[2],
                    0,
                    catalogue,
                    0,
                    ...room,
                ),
            ),
        );
    });
}

function remarkOf(axle, mismatch) {
    const number = mismatches.numberOf(mismatch);
    const sentence = textFrom(written((...room) => c.rodt_axle_mismatch_format(axle, number, ...room)));
    return keep({ mismatch, sentence, ...sourced(c.rodt_axle_mismatch_source, number) }, AXLE, axle, mismatch);
}

function axleAt(at) {
    const axle = AXLE.readInto({}, at);
    return Object.freeze({ ...axle, remarks: Object.freeze(axle.mismatches.map((word) => remarkOf(at, word))) });
}

function adviceOf(number) {
    return Object.freeze({
        advice: advices.wordOf(number),
        sentence: textAt(c.rodt_advice_text(number)),
        ...sourced(c.rodt_advice_source, number),
    });
}

const END_NAMES = ["position", "finding", "adjuster", "armLength"];

/**
 * Puts wheel ends and their findings, an array each; what cannot be read is refused with the number of the wheel end.
 */
function putEnds(given) {
    const [ends, findings] = [WHEEL_END.take(given.length), FINDING.take(given.length)];
    given.forEach((end, index) => {
        const { finding, ...rest } = onlyKnown(end, END_NAMES, "a wheel end");
        memory().set(bytesOf(finding, "finding", "rodt_finding"), findings + index * FINDING.size);
        try {
            fill(WHEEL_END, ends + index * WHEEL_END.size, rest);
        } catch (error) {
            throw withIndex(error, index);
        }
    });
    return { ends, findings };
}

function vehicleAt(at, given, places) {
    const count = given.length;
    const made = VEHICLE.readInto(new VehicleFinding(), at);
    const axles = at + VEHICLE.offset("axles");
    made.count = countAt(at + VEHICLE.offset("count"));
    made.axles = Object.freeze(made.axles.map((_, i) => axleAt(axles + i * AXLE.size)));
    made.advice = Object.freeze(Array.from({ length: count }, (_, i) => adviceOf(uint32At(places.advice + 4 * i))));
    return keep(
        made,
        VEHICLE,
        at,
        {
            ends: copyOf(places.ends, count * WHEEL_END.size),
            findings: copyOf(places.findings, count * FINDING.size),
            advice: copyOf(places.advice, 4 * count),
        },
        given.map((end) => end.finding),
    );
}

/**
 * Judges a vehicle or combination from its wheel ends, in any order: { position, finding, adjuster, armLength } each,
 * with a position as text, a Finding, "manual" or "automatic", and the effective length of the slack adjuster. `brakes`
 * is how many there are, measured or not; without it both ends of every axle up to the last one.
 */
export function judgeVehicle(ends, options = {}) {
    const given = [...ends];
    const brakes = brakesOf(options, "judgeVehicle");
    return scratch(() => {
        const places = { ...putEnds(given), advice: take(4 * Math.max(given.length, 1)) };
        const out = VEHICLE.take();
        checked(
            (error) =>
                c.rodt_vehicle_combine(places.ends, given.length, brakes, places.findings, places.advice, out, error),
            null,
            true,
        );
        return vehicleAt(out, given, places);
    });
}
