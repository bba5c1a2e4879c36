// SPDX-License-Identifier: Apache-2.0
// What two persons answer, by the place of the question; what is not here takes what the page offers, or yes.
"use strict";

/* 2R is over its limit by 1/16. */
const truck = {
  vehicle: "single",
  axles: "2",
  "reserve before": 110,
  "reserve after": 100,
  "warning pressure": 62,
  "drain answer": "yes",
  "contamination answer": "no",
  spring_brake: "released",
  engine: "off",
  psi: 95,
  "1L chamber": "20",
  "1L stroke_class": "standard",
  "1L adjuster": "automatic",
  "2L chamber": "30",
  "2L stroke_class": "standard",
  "1L released": "1 1/2",
  "2L released": "2 1/8",
  "2R released": "2 1/16",
  "1R released": "1 1/2",
  "1L applied": "3 1/8",
  "2L applied": "4",
  "2R applied": "4 1/8",
  "1R applied": "3 1/4",
};

/* Five axles, ten brakes, all in adjustment. */
const combination = {
  vehicle: "combination",
  axles: ["3", "2"],
  "reserve before": 110,
  "reserve after": 100,
  "warning pressure": 62,
  "drain answer": "yes",
  "contamination answer": "no",
  "audible-leak answer": "no",
  "cut-out pressure": 125,
  "cut-in pressure": 102,
  "supply-valve pressure": 40,
  "parking-valve pressure": 35,
  "build-up seconds": "38",
  "loss-released before": 110,
  "loss-released after": 108,
  "loss-applied before": 110,
  "loss-applied after": 107,
  "tractor-protection pressure": 60,
  "tractor-protection answer": "no",
  "trailer-brakes answer": "yes",
  spring_brake: "released",
  engine: "off",
  psi: 95,
  "1L chamber": "20",
  "1L stroke_class": "standard",
  "1L adjuster": "automatic",
  "2L chamber": "30",
  "2L stroke_class": "standard",
  "4L chamber": "30",
  "4L stroke_class": "long",
};
for (const axle of [1, 2, 3, 4, 5]) {
  for (const side of ["L", "R"]) {
    combination[`${axle}${side} released`] = axle === 1 ? "1 1/2" : "2 1/8";
    combination[`${axle}${side} applied`] = axle === 1 ? "3" : "3 3/4";
  }
}

module.exports = { truck, combination };
