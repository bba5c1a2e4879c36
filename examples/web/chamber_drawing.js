// SPDX-License-Identifier: Apache-2.0
// A brake chamber from the side, with its rod, clevis and adjuster, and where the tape goes.
"use strict";

const FACE = 132,
  ROD = 84,
  CAM = { x: 238, y: 172 };
const PIN = { released: 204, applied: 252 };

function label(x, y, text, anchor) {
  return draw("text", { x, y, "text-anchor": anchor || "middle" }, text);
}

/* Which marks of the chamber a clue is about; what is none, about all that tells its limit. */
const CLUE_MARKS = {
  family: ["family"],
  stamp: ["stamp"],
  "port-shape": ["port"],
  tag: ["tag"],
  "rated-stroke": ["tag", "stamp"],
  diameter: ["diameter"],
};

/* Two cans with a clamp band; the stamp, the ports and the tag are what tells its limit. */
function drawCans(marks, stamp) {
  const look = (name) => (marks.includes(name) ? "mark" : "band");
  return [
    draw("path", { class: "steel", d: "M12 62q0 -16 16 -16h38v76h-38q-16 0 -16 -16z" }),
    draw("path", { class: "steel", d: `M66 40h26q30 0 40 22v44q-10 22 -40 22h-26z` }),
    draw("rect", { class: look("family"), x: 60, y: 32, width: 12, height: 104, rx: 4 }),
    draw("rect", { class: look("port"), x: 82, y: 26, width: 16, height: 14 }),
    draw("path", { class: look("tag"), d: "M54 138h24l-5 18h-14z" }),
    draw("text", { class: "stamp", x: 100, y: 92, "text-anchor": "middle" }, stamp || "30"),
  ];
}

function drawRod(pin, ghost) {
  return draw(
    "g",
    { class: ghost ? "ghost" : "moving" },
    draw("path", { class: "rod", d: `M${FACE} ${ROD}H${pin - 22}` }),
    draw("path", { class: "arm", d: `M${pin} ${ROD}L${CAM.x} ${CAM.y}` }),
    draw("path", { class: "fork", d: `M${pin - 26} ${ROD - 12}h36v7h-20v10h20v7h-36z` }),
    draw("circle", { class: "pin", cx: pin, cy: ROD, r: 6.5 }),
  );
}

/* The tape lies along the rod, its hook at the chamber face. */
function drawTape(pin) {
  const tape = draw(
    "g",
    { class: "tape-figure" },
    draw("rect", { x: FACE, y: 44, width: pin - FACE + 54, height: 22 }),
  );
  for (let i = 0; i * 6 < pin - FACE + 50; i++) {
    tape.append(draw("path", { d: `M${FACE + 3 + i * 6} 66v${i % 8 === 0 ? -16 : i % 4 === 0 ? -11 : -6}` }));
  }
  tape.append(
    draw("path", { class: "to", d: `M${FACE} 38V${ROD + 30}M${pin} 38V${ROD}` }),
    draw("path", {
      class: "arrow",
      d: `M${FACE + 2} 32H${pin - 2}M${FACE + 9} 27l-7 5l7 5M${pin - 9} 27l7 5l-7 5`,
    }),
  );
  return tape;
}

function drawCam() {
  return draw(
    "g",
    { class: "cam" },
    draw("circle", { cx: CAM.x, cy: CAM.y, r: 17 }),
    draw("circle", { cx: CAM.x, cy: CAM.y, r: 7 }),
  );
}

const MARK_WORDS = { family: "heldBy", stamp: "stamp", port: "port", tag: "tag", diameter: "diameter" };

/* None while the rod or the adjuster is asked for. */
function marksOf(part) {
  if (["released", "applied", "arm_length", "adjuster"].includes(part)) return [];
  return CLUE_MARKS[part] || ["stamp", "port", "tag"];
}

function describeChamber(part) {
  const texts = {
    released: `${word("released")}: ${word("measureHere")}`,
    applied: `${word("applied")}: ${word("measureHere")}`,
    arm_length: word("armHere"),
    adjuster: word("adjuster"),
  };
  return texts[part] || marksOf(part).map((mark) => word(MARK_WORDS[mark])).join(", ");
}

/* The label of a mark, and a line to it. */
function drawMark(mark) {
  const text = (x, y, anchor) => label(x, y, word(MARK_WORDS[mark]), anchor);
  switch (mark) {
    case "family":
      return [text(14, 20, "start"), draw("path", { class: "lead", d: "M66 24V32" })];
    case "port":
      return [text(104, 18, "start")];
    case "tag":
      return [text(66, 174)];
    case "diameter":
      return [
        draw("path", { class: "arrow", d: "M6 32V136M1 39l5 -7l5 7M1 129l5 7l5 -7M2 32H60M2 136H60" }),
        text(4, 166, "start"),
      ];
    default:
      return [text(140, ROD + 34, "start"), draw("path", { class: "lead", d: `M138 ${ROD + 29}L112 ${ROD + 12}` })];
  }
}

/* `part` is what the question asks for: released, applied, arm_length, adjuster, a clue, or all marks of the chamber. */
function chamberDrawing(part, stamp) {
  const pin = part === "applied" ? PIN.applied : PIN.released;
  const marks = marksOf(part);
  const figure = draw("svg", {
    class: "chamber",
    viewBox: "0 0 360 196",
    role: "img",
    "aria-label": describeChamber(part),
  });
  if (part === "applied") figure.append(drawRod(PIN.released, true));
  figure.append(drawCam(), ...drawCans(marks, stamp), drawRod(pin, false));
  if (part === "released" || part === "applied")
    figure.append(
      drawTape(pin),
      label((FACE + pin) / 2, 22, word(part)),
      label(pin - 22, 186, word("clevis"), "end"),
      draw("path", { class: "lead", d: `M${pin - 18} 178L${pin - 3} ${ROD + 10}` }),
    );
  figure.append(...marks.flatMap(drawMark));
  if (part === "arm_length")
    figure.append(
      draw("path", { class: "arrow", d: `M${pin + 20} ${ROD - 4}L${CAM.x + 20} ${CAM.y - 4}` }),
      label(CAM.x - 24, 186, word("armHere"), "end"),
    );
  if (part === "adjuster")
    figure.append(
      label(CAM.x + 24, 140, word("adjuster"), "start"),
      draw("path", { class: "second", d: `M${pin - 4} ${ROD + 20}L${pin + 24} ${ROD + 58}` }),
    );
  return figure;
}
