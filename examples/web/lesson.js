// SPDX-License-Identifier: Apache-2.0
// For learners: the tapes of an invented vehicle. Stroke, limit, verdict and reason of each wheel end, then the count
// of the vehicle; the command marks what was answered.
"use strict";

const lesson = { words: [], level: null, sheet: null, key: null, texts: null, reasons: [], typed: false };

function chooseLevel() {
  paint({
    name: "level",
    top: [make("h1", {}, word("practiceBrakes")), make("p", { class: "say" }, word("levelHint"))],
    panel: [
      keyRow(
        "one",
        ["basic", "mixed", "hard"].map((level) => button(word(level), () => beginLesson(newSeed(), level))),
      ),
      closeKey(showLearning),
    ],
  });
}

function beginLesson(seed, level) {
  const words = ["practice", "--rules", rulesForLearning(), "--seed", String(seed), "--level", level || "mixed"];
  const found = runJson([...words, "--json"]);
  if (!found) return showFailure();
  const texts = { marks: run([...words, "--sheet", "-"]).out, why: run([...words, "--key", "-"]).out };
  Object.assign(lesson, { words, level, sheet: found.sheet, key: found.key, texts });
  Object.assign(lesson, { reasons: reasonsOf(texts.marks), at: 0, given: [], right: 0, asked: 0 });
  return askLesson();
}

/* "1 within-limit, 2 at-limit": the paragraph of a sheet that numbers the reasons, in the language of the page. */
function reasonsOf(sheet) {
  const part = sheet.split("\n\n").find((one) => /\b1 [^]*\b2 [^]*\b11 /.test(one)) || "";
  const found = part.replace(/\s+/g, " ").matchAll(/\b(\d+) (.+?)(?=, \d+ |$)/g);
  return [...found].map(([, number, says]) => ({ number, says }));
}

/* What a sheet or a key says of a wheel end, in the language of the page: a line of six blanks or more goes with it,
 * one of ten or more goes on with the line above. */
function linesAbout(text, position) {
  const lines = text.split("\n"),
    found = [];
  for (
    let at = lines.findIndex((line) => line.startsWith(position + " "));
    at >= 0 && at < lines.length;
    at++
  ) {
    if (found.length > 0 && !lines[at].startsWith("      ")) break;
    const line = lines[at].slice(6);
    if (found.length > 0 && line.startsWith("    ")) found[found.length - 1] += " " + line.trim();
    else found.push(line.trim().replace(/ {2,}/, ": "));
  }
  return found;
}

/* "2 3/16" in sixteenths. */
function sixteenthsOf(text) {
  const parts = /^(?:(\d+) )?(\d+)(?:\/(\d+))?$/.exec(text);
  if (!parts) return 0;
  const rest = parts[3] ? Number(parts[2]) / Number(parts[3]) : Number(parts[2]);
  return Math.round((Number(parts[1] || 0) + rest) * SIXTEENTHS);
}

/* Two inches of tape around the pin, with its numbers. */
function lessonTape(text, title) {
  const at = sixteenthsOf(text),
    from = Math.max(0, Math.floor(at / SIXTEENTHS) - (at % SIXTEENTHS < 4 ? 1 : 0));
  const figure = draw("svg", {
    class: "lesson-tape",
    viewBox: "0 0 344 80",
    role: "img",
    "aria-label": `${title}: ${text}`,
  });
  figure.append(draw("rect", { class: "yellow", x: 0, y: 26, width: 344, height: 54 }));
  for (let i = 0; i <= 2 * SIXTEENTHS; i++) {
    const size = i === 0 ? 16 : Math.min(16, greatestDivisor(i, SIXTEENTHS)),
      x = 12 + i * 10;
    figure.append(draw("path", { class: "line", d: `M${x} 26v${7 + Math.log2(size) * 5}` }));
    const last = i === 2 * SIXTEENTHS,
      place = last ? { x: x - 4, y: 74, "text-anchor": "end" } : { x: x + 4, y: 74 };
    if (i % SIXTEENTHS === 0) figure.append(draw("text", place, String(from + i / SIXTEENTHS)));
  }
  const x = 12 + (at - from * SIXTEENTHS) * 10;
  figure.append(
    draw("path", { class: "pointer", d: `M${x} 25l-9 -18h18z` }),
    draw("text", { x: 330, y: 18, "text-anchor": "end" }, title),
  );
  return figure;
}

function lessonFacts(end, key) {
  if (!end) return [];
  return [
    end.released ? lessonTape(key.released, word("firstReading")) : null,
    end.applied ? lessonTape(key.applied, word("secondReading")) : null,
    make(
      "p",
      { class: "say" },
      make("b", {}, word("marks") + ": "),
      linesAbout(lesson.texts.marks, end.position).join(" "),
    ),
  ];
}

/* --- Questions ------------------------------------------------------------------------------------------ */

const VERDICT_KEYS = [
  ["in", "inAdjustment", "good"],
  ["out", "outOfAdjustment", "bad"],
  ["dead", "inoperative", "bad"],
  ["open", "undetermined", "open"],
];
const OUTCOME_KEYS = [
  ["out", "outOfService"],
  ["below", "belowCriterion"],
  ["ambiguous", "ambiguous"],
  ["open", "undetermined"],
];

/* What is asked of a wheel end, and of the vehicle behind the last one; a figure by the tape's keys or typed. */
const ASKED_OF_END = [
  { name: "stroke", figure: true },
  { name: "limit", figure: true },
  { name: "verdict", keys: () => VERDICT_KEYS.map(([value, says, state]) => [value, word(says), state]) },
  { name: "reason", row: "three", keys: () => lesson.reasons.map(({ number, says }) => [number, `${number} ${says}`]) },
];
const ASKED_OF_VEHICLE = [
  { name: "defective", number: true },
  { name: "outcome", keys: () => OUTCOME_KEYS.map(([value, says]) => [value, word(says)]) },
];

function lessonEnd() {
  return lesson.sheet.wheel_ends[lesson.at] || null;
}

function lessonBar() {
  const ends = lesson.sheet.wheel_ends.length;
  return [
    make("p", { class: "part" }, word("practiceBrakes")),
    make("p", { class: "count" }, `${Math.min(lesson.at + 1, ends)} ${word("of")} ${ends}`),
  ];
}

function askLesson(refused) {
  const end = lessonEnd(),
    asked = (end ? ASKED_OF_END : ASKED_OF_VEHICLE)[lesson.given.length],
    host = make("div", { class: "answers" });
  if (!asked) return markLesson();
  const send = (value) => takeLesson(String(value));
  paint({
    name: "lesson",
    bar: lessonBar(),
    top: [
      refused ? make("p", { class: "say refused" }, refused) : null,
      ...lessonFacts(end, lesson.key.wheel_ends[lesson.at]),
      end ? null : make("p", { class: "say big" }, word("wholeVehicle")),
    ],
    panel: [
      make(
        "div",
        { class: "head" },
        make("h1", {}, `${end ? end.position + ": " : ""}${word(asked.name)}`),
        make("p", { id: "step", tabindex: "-1" }),
      ),
      host,
      lessonWays(asked, send),
    ],
  });
  return fillLesson(host, asked, send);
}

/* Beside the answers: no such figure, the keyboard or the tape, no answer, and the end. */
function lessonWays(asked, send) {
  const turn = () => {
    lesson.typed = !lesson.typed;
    askLesson();
  };
  const way = lesson.typed ? ["▦", "useKeys"] : ["⌨", "typeIt"];
  const keys = [
    asked.figure ? button(word("noFigure"), () => send("none"), "key word") : null,
    asked.keys ? null : button(way[0], turn, "key", { "aria-label": word(way[1]) }),
    button(word("skip"), () => send(""), "key word"),
    button(word("close"), showLearning, "key word"),
  ].filter(Boolean);
  return keyRow({ 2: "two", 3: "three", 4: "wide" }[keys.length], keys);
}

function fillLesson(host, asked, send) {
  if (asked.keys)
    host.replaceChildren(
      keyRow(
        asked.row || "names",
        asked.keys().map(([value, says, state]) =>
          button(
            [state ? signFigure(state, 28) : null, make("span", {}, says)].filter(Boolean),
            () => send(value),
            "key signed",
          ),
        ),
      ),
    );
  else if (lesson.typed) {
    textField(host, send, word("answer"));
    document.getElementById("field").focus();
  } else if (asked.figure) tapePicker(host, send);
  else keypad(host, send, [" 1/2", "."], "");
}

/* The command reads every answer as it comes; what it cannot read is asked again. */
function takeLesson(value) {
  const marked = markedBy([...lesson.given, value]);
  if (marked.status === 2) return askLesson(refusalOf(marked.err));
  lesson.given.push(value);
  return askLesson();
}

/* Behind the place and the text that was typed. */
function refusalOf(error) {
  const lines = error.trim().split("\n").slice(2);
  return lines.map((line) => line.trim()).filter((line) => line !== "^").join(" ");
}

/* --- Marks ------------------------------------------------------------------------------------------------ */

function markedBy(given, ...more) {
  const end = lessonEnd(),
    line = `${end ? end.position : "vehicle"}: ${given.join("; ")}\n`;
  return call({
    do: "run",
    arguments: [...lesson.words, "--answers", "-", ...more],
    language: LANGUAGES[language],
    input: line,
  });
}

/* A heading, and its lines: one of six blanks begins a line, one of ten goes on with it. */
function blocksOf(text) {
  const blocks = [];
  for (const line of text.split("\n")) {
    const block = blocks[blocks.length - 1];
    if (/^\S/.test(line)) blocks.push({ heading: line, lines: [] });
    else if (/^ {10}/.test(line)) block.lines[block.lines.length - 1] += " " + line.trim();
    else if (line.trim() !== "") block.lines.push(line.trim().replace(/ {2,}/, ": "));
  }
  return blocks;
}

/* What was wrong with each answer, of the wheel end or the vehicle. */
function lessonFaults(marked) {
  const first = lesson.sheet.wheel_ends[0].position,
    blocks = blocksOf(marked),
    begin = blocks.findIndex(({ heading }) => heading === first || heading.startsWith(first + ":"));
  return blocks[begin + lesson.at].lines.map((line) => line.replace(/^[^:]*: (?:\p{Lu}+\s*: )?/u, ""));
}

function markLesson() {
  const end = lessonEnd(),
    asked = end ? ASKED_OF_END : ASKED_OF_VEHICLE,
    position = end ? end.position : "vehicle",
    marks = JSON.parse(markedBy(lesson.given, "--json").out).marks.find((one) => one.position === position),
    faults = lessonFaults(markedBy(lesson.given).out);
  const lines = asked.map(({ name }, i) => {
    const right = marks[name] === "right";
    lesson.asked++;
    lesson.right += right ? 1 : 0;
    return markLine(word(name), right, right ? saysOf(asked[i], lesson.given[i]) : faults[i]);
  });
  const why = end ? linesAbout(lesson.texts.why, end.position) : [lesson.key.count, lesson.key.in_all];
  paint({
    name: "marks",
    bar: lessonBar(),
    top: [
      make("h1", {}, end ? end.position : word("wholeVehicle")),
      ...lines,
      ...why.map((text) => make("p", { class: "say" }, text)),
      make("p", { class: "say big" }, `${word("yourScore")}: ${lesson.right} ${word("of")} ${lesson.asked}`),
    ],
    panel: [
      keyRow("two", [
        button(word("close"), showLearning),
        button(word(end ? "next" : "another"), nextLesson, "key primary"),
      ]),
    ],
  });
}

function saysOf(asked, value) {
  const key = asked.keys ? asked.keys().find(([one]) => one === value) : null;
  return key ? key[1] : value;
}

function nextLesson() {
  if (!lessonEnd()) return beginLesson(newSeed(), lesson.level);
  lesson.at++;
  lesson.given = [];
  return askLesson();
}
