// SPDX-License-Identifier: Apache-2.0
// The vehicle from above, front to the left as a strip, or front up with a button for each wheel end.
"use strict";

/* Shape before colour: a ring with a tick, an octagon with a cross, a dashed ring with a question mark, a ring. */
const STATES = {
  "in-adjustment": "good",
  "out-of-adjustment": "bad",
  inoperative: "bad",
  undetermined: "unknown",
};

function stateOf(end) {
  if (end && end.verdict && STATES[end.verdict]) return STATES[end.verdict];
  return end && end.released ? "begun" : "open";
}

function octagon(radius) {
  return [...Array(8).keys()]
    .map((i) => {
      const angle = Math.PI / 8 + (i * Math.PI) / 4;
      return `${(radius * Math.cos(angle)).toFixed(1)},${(radius * Math.sin(angle)).toFixed(1)}`;
    })
    .join(" ");
}

/* A sign of a state around 0, 0. */
function stateSign(state, radius) {
  const r = radius,
    sign = draw("g", { class: "sign " + state });
  if (state === "bad")
    sign.append(
      draw("polygon", { points: octagon(r) }),
      draw("path", {
        d: `M${-r * 0.4} ${-r * 0.4}L${r * 0.4} ${r * 0.4}M${r * 0.4} ${-r * 0.4}L${-r * 0.4} ${r * 0.4}`,
      }),
    );
  else sign.append(draw("circle", { r: r * 0.92 }));
  if (state === "good")
    sign.append(draw("path", { d: `M${-r * 0.45} 0L${-r * 0.1} ${r * 0.38}L${r * 0.48} ${-r * 0.36}` }));
  if (state === "edge")
    sign.append(draw("path", { d: `M0 ${-r * 0.5}V${r * 0.12}M0 ${r * 0.48}V${r * 0.52}` }));
  if (state === "unknown")
    sign.append(
      draw("path", {
        d: `M${-r * 0.28} ${-r * 0.25}A${r * 0.3} ${r * 0.3} 0 1 1 0 ${r * 0.12}V${r * 0.28}M0 ${r * 0.52}V${r * 0.56}`,
      }),
    );
  if (state === "begun") sign.append(draw("path", { d: `M${-r * 0.42} 0H${r * 0.42}` }));
  return sign;
}

/* A figure of its own: a sign of a size in pixels. */
function signFigure(state, size) {
  return draw(
    "svg",
    { class: "figure", width: size, height: size, viewBox: "-20 -20 40 40", "aria-hidden": "true" },
    stateSign(state, 18),
  );
}

/* Units as they are known; without them all axles are of one. */
function unitsOf(vehicle) {
  const units = (vehicle.units || []).filter((unit) => unit.axles > 0);
  if (units.length > 0) return units;
  const axles = new Set((vehicle.ends || []).map((end) => parseInt(end.position)));
  return axles.size > 0 ? [{ kind: "truck", axles: axles.size }] : [];
}

const BETWEEN_AXLES = 36,
  GAP = 16;

/* Where the axles of a unit are, from its front, and its length. A unit that drives steers with its first axle. */
function layOut(unit, drives) {
  const close = (count, from) => [...Array(count).keys()].map((i) => from + i * BETWEEN_AXLES);
  if (unit.kind === "dolly") return { length: 30 + unit.axles * BETWEEN_AXLES, axles: close(unit.axles, 30) };
  if (!drives) {
    const from = unit.axles > 2 ? 60 : 96;
    return { length: from + (unit.axles - 1) * BETWEEN_AXLES + 30, axles: close(unit.axles, from) };
  }
  const rear = 100;
  return {
    length: unit.axles > 1 ? rear + (unit.axles - 2) * BETWEEN_AXLES + 32 : 90,
    axles: [36, ...close(unit.axles - 1, rear)],
  };
}

const MIDDLE = 55;

function drawUnit(unit, drives, place, x) {
  const body = draw("g", { class: "unit" });
  const low = unit.kind === "dolly";
  body.append(
    draw("rect", {
      x,
      y: low ? MIDDLE - 8 : MIDDLE - 24,
      width: place.length,
      height: low ? 16 : 48,
      rx: low ? 3 : 7,
    }),
  );
  if (drives)
    body.append(
      draw("path", {
        class: "cab",
        d: `M${x + 7} ${MIDDLE - 24}h15v48h-15a7 7 0 0 1 -7 -7v-34a7 7 0 0 1 7 -7z`,
      }),
      draw("path", { d: `M${x + 32} ${MIDDLE - 24}v48` }),
    );
  return body;
}

function drawEnd(end, position, x, current) {
  const left = position.endsWith("L"),
    y = left ? 15 : 95;
  const group = draw("g", {
    transform: `translate(${x} ${y})`,
    class: position === current ? "end now" : "end",
  });
  if (position === current) group.append(draw("circle", { class: "here", r: 16.5 }));
  group.append(stateSign(stateOf(end), 12));
  return group;
}

function vehicleStrip(vehicle, current) {
  const units = unitsOf(vehicle),
    found = new Map((vehicle.ends || []).map((end) => [end.position, end]));
  const figure = draw("svg", { class: "strip", "aria-hidden": "true" });
  let x = 6,
    axle = 0;
  units.forEach((unit, i) => {
    const drives = i === 0,
      place = layOut(unit, drives);
    if (i > 0) figure.append(draw("path", { class: "coupling", d: `M${x - GAP - 6} ${MIDDLE}h${GAP + 12}` }));
    for (const at of place.axles)
      figure.append(
        draw("path", { class: "axle", d: `M${x + at} 25v60` }),
        ...[25, 77].map((y) =>
          draw("rect", { class: "wheel", x: x + at - 13, y, width: 26, height: 8, rx: 3 }),
        ),
      );
    figure.append(drawUnit(unit, drives, place, x));
    for (const at of place.axles) {
      axle++;
      for (const side of vehicle.ends ? ["L", "R"] : [])
        figure.append(drawEnd(found.get(axle + side), axle + side, x + at, current));
    }
    x += place.length + GAP;
  });
  figure.setAttribute("viewBox", `0 -1 ${Math.max(200, x - GAP + 6)} 112`);
  return figure;
}

/* The middle of a row of the map: frame and axle, the cab before the first one. */
function axleFigure(first, last, drives) {
  const figure = draw("svg", {
    class: "frame",
    viewBox: "0 0 100 84",
    preserveAspectRatio: "none",
    "aria-hidden": "true",
  });
  const top = first ? 6 : 0,
    bottom = last ? 78 : 84;
  const open = first ? `M18 84V${top}H82V84` : last ? `M18 0V${bottom}H82V0` : "M18 0V84M82 0V84";
  figure.append(
    draw("rect", { class: "floor", x: 18, y: top, width: 64, height: bottom - top }),
    draw("path", { class: "axle", d: "M0 42H18M82 42H100" }),
    draw("path", { class: "rails", d: first && last ? `M18 ${top}H82V${bottom}H18z` : open }),
  );
  if (first && drives) figure.append(draw("path", { class: "cab", d: `M18 ${top}h64v14h-64z` }));
  return figure;
}

function endKey(end, position, press, current) {
  const state = stateOf(end),
    says = (end && (end.says || end.released)) || "";
  return button(
    [signFigure(state, 30), make("span", { class: "place" }, position), make("small", {}, says)],
    () => press(position),
    "key end-key" + (position === current ? " now" : ""),
    { "aria-label": `${position}: ${says || word("openEnd")}` },
  );
}

function vehicleMap(vehicle, current, press) {
  const found = new Map((vehicle.ends || []).map((end) => [end.position, end])),
    rows = [];
  let axle = 0;
  unitsOf(vehicle).forEach((unit, i) => {
    if (i > 0) rows.push(make("div", { class: "link", "aria-hidden": "true" }));
    for (let n = 0; n < unit.axles; n++) {
      axle++;
      const key = (side) => endKey(found.get(axle + side), axle + side, press, current);
      rows.push(
        make(
          "div",
          { class: "axle-row" },
          key("L"),
          axleFigure(n === 0, n === unit.axles - 1, i === 0),
          key("R"),
        ),
      );
    }
  });
  return make(
    "div",
    { class: "map" },
    make("p", { class: "front", "aria-hidden": "true" }, "▲ " + word("front")),
    rows,
  );
}
