// SPDX-License-Identifier: Apache-2.0
// What the package gives: this list and nothing else.
import { allEnumerations } from "./describe.mjs";
import { c, textAt } from "./memory.mjs";

/** Version of the library. */
export const version = textAt(c.rodt_version());
/** Day on which the last row of the tables was changed or read again in its source, ISO. */
export const tablesEdition = textAt(c.rodt_tables_edition());

/** The words of an enumeration with what each means: words("rodt_reason"). Its name is that in C. */
export function words(name) {
    const found = allEnumerations().find((each) => each.name === name);
    if (found === undefined) throw new RangeError(`there is no enumeration ${name}`);
    return Object.freeze(Object.fromEntries([...found.word].map(([number, word]) => [word, found.text.get(number)])));
}

export {
    AirFinding,
    buildUpSeconds,
    checkTitle,
    estimateApplication,
    estimateApplications,
    judgeAir,
    requiredVolume,
    volumeRows,
} from "./air.mjs";
export { Catalogue, catalogue, steps } from "./catalogue.mjs";
export { alFactor, chamberRows, pushrodForce, ratedVolume, readChamber, writeChamber } from "./chambers.mjs";
export {
    Answers,
    judgeColumns,
    NO_LIMIT,
    NO_STROKE,
    PARTS_PER_INCH,
    Plan,
    UNITS_PER_64TH,
    UNITS_PER_INCH,
    UNITS_PER_MM,
    UNITS_PER_PSI,
} from "./columns.mjs";
export { RodtravelError } from "./error.mjs";
export { Finding, judge, judgeRow, rowErrors } from "./findings.mjs";
export { Fraction } from "./fraction.mjs";
export { Identification, identify } from "./identify.mjs";
export {
    inchesFromMm,
    psiFromKpa,
    readDate,
    readLength,
    readLengthUnit,
    readPressure,
    readPressureUnit,
    roundLength,
    writeDecimal,
    writeLength,
    writePressure,
} from "./lengths.mjs";
export { loadRules, Rules, ruleSet, ruleSets, writeSource } from "./rules.mjs";
export {
    addToTally,
    Count,
    criterionParts,
    judgeTally,
    judgeVehicle,
    readPosition,
    VehicleFinding,
} from "./vehicles.mjs";
