// SPDX-License-Identifier: Apache-2.0
// What is promised in words: the public names, and a type for each.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { folder, require, rt, run } from "./tap.mjs";

// A name is added or removed here on purpose only.
const NAMES = `
    AirFinding Answers Catalogue Count Finding Fraction Identification NO_LIMIT NO_STROKE PARTS_PER_INCH Plan RodtravelError Rules
    UNITS_PER_64TH UNITS_PER_INCH UNITS_PER_MM UNITS_PER_PSI VehicleFinding addToTally alFactor buildUpSeconds catalogue
    chamberRows checkTitle criterionParts estimateApplication estimateApplications identify inchesFromMm judge judgeAir
    judgeColumns judgeRow judgeTally judgeVehicle loadRules psiFromKpa pushrodForce ratedVolume readChamber readDate
    readLength readLengthUnit readPosition readPressure readPressureUnit requiredVolume roundLength rowErrors ruleSet
    ruleSets steps tablesEdition version volumeRows words writeChamber writeDecimal writeLength writePressure
    writeSource`;

const read = (...path) => readFileSync(join(...path), "utf8");

await run({
    publicNames() {
        assert.deepEqual(Object.keys(rt).sort(), NAMES.trim().split(/\s+/).sort());
    },

    /** Every public name has a type, and no type is of a name that there is not. */
    types() {
        const types = read(folder, "rodtravel.d.mts");
        const declared = [...types.matchAll(/^export (?:class|function|const) (\w+)/gm)].map(([, name]) => name);
        assert.deepEqual([...new Set(declared)].sort(), Object.keys(rt).sort());
        assert.equal(read(folder, "rodtravel.d.cts"), types);
        for (const word of Object.keys(rt.words("rodt_verdict"))) assert.ok(types.includes(`"${word}"`), word);
    },

    /** A property that an object has is in its type, by the same description. */
    typesOfObjects() {
        const types = read(folder, "rodtravel.d.mts");
        const finding = rt.judge("30", "2", "4");
        const objects = {
            Finding: finding,
            Chamber: finding.chamber,
            Limit: finding.lawRow,
            Source: finding.source,
            VehicleFinding: rt.judgeVehicle([{ position: "1L", finding }]),
            AirFinding: rt.judgeAir("warning", {}),
            Identification: rt.identify({ stamp: "30" }),
        };
        for (const [name, object] of Object.entries(objects)) {
            const bodies = [
                ...types.matchAll(new RegExp(`^export (?:class|interface) ${name} \\{([^]*?)^\\}`, "gm")),
            ].map(([, body]) => body);
            for (const property of Object.keys(object))
                assert.match(bodies.join(), new RegExp(`readonly ${property}:`), name);
        }
    },

    /** Both ways of loading give one instance. */
    oneInstance() {
        const common = require(join(folder, "rodtravel.cjs"));
        assert.equal(common.Finding, rt.Finding);
        assert.deepEqual(Object.keys(common).sort(), Object.keys(rt).sort());
    },
});
