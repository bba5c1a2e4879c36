// SPDX-License-Identifier: Apache-2.0
// A whole vehicle from a CSV form: what cannot be read goes to standard error, the report as JSON to standard output.
//   npm install rodtravel
//   node fleet.mjs [VEHICLE.csv [LANGUAGE]]
import { readFileSync } from "node:fs";
import { catalogue, judgeRow, judgeVehicle } from "rodtravel";

const [path = new URL("../data/demo_vehicle.csv", import.meta.url), language = "en"] = process.argv.slice(2);

/** The rows of a form without quotes, by the names of its columns. */
function rows(text) {
    const [head, ...rest] = text
        .split(/\r?\n/)
        .filter((line) => line !== "")
        .map((line) => line.split(","));
    return rest.map((cells) => Object.fromEntries(head.map((name, i) => [name, cells[i]])));
}

const ends = rows(readFileSync(path, "utf8")).map((row) => {
    const { finding, error } = judgeRow({
        chamber: row.chamber,
        released: row.released,
        applied: row.applied,
        strokeClass: row.stroke_class,
        psi: row.psi,
        date: row.date,
    });
    if (error !== null) console.error(`${row.position}: ${error.message}`);
    return {
        position: row.position,
        finding,
        adjuster: row.adjuster || "not-recorded",
        armLength: row.arm_length || null,
    };
});

const vehicle = judgeVehicle(ends);
console.log(language === "en" ? vehicle.json : catalogue(language).json(vehicle));
