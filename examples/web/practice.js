// SPDX-License-Identifier: Apache-2.0
// For learners: tapes of an invented vehicle, sheets on paper, cards and limits, all made by the command.
"use strict";

const lesson = { seed: 0, sheet: null, key: null, texts: null, at: 0, right: 0, asked: 0 };

function rulesForLearning() {
  return settings.rules || "us-fmcsr";
}

function showLearning() {
  const page = (title, words, name) =>
    button(word(title), () =>
      showPage(
        word(title),
        run([...words, "--rules", rulesForLearning(), "--html", "-"]).out,
        name,
        showLearning,
      ),
    );
  paint({
    name: "learning",
    top: [make("h1", {}, word("learn")), make("p", { class: "say" }, rulesForLearning())],
    panel: [
      keyRow("names", [
        button(word("practiceBrakes"), () => beginLesson(newSeed())),
        button(word("practiceChecks"), () => beginExam(newSeed())),
        button(word("paperBrakes"), () => showPaper(word("paperBrakes"), [], newSeed(), "sheet")),
        button(word("paperChecks"), () => showPaper(word("paperChecks"), ["--checks"], newSeed(), "sheet")),
        page("cards", ["cards"], "cards.html"),
        page("limits", ["limits"], "limits.html"),
      ]),
      closeKey(showHome),
    ],
  });
}

function newSeed() {
  return Date.now() % 100000;
}

/* --- On paper ------------------------------------------------------------------------------------------ */

/* A sheet or its key, as the command writes them to a file. */
function showPaper(title, words, seed, side) {
  const name = side + ".html",
    reply = run(["practice", ...words, "--rules", rulesForLearning(), "--seed", String(seed), "--" + side, name]),
    other = side === "sheet" ? "key" : "sheet";
  if (!reply.files) return showFailure(reply.err);
  return showPage(`${title} (${word(side)})`, reply.files[name], name, showLearning, [
    button(word(other), () => showPaper(title, words, seed, other)),
  ]);
}

/* --- Reading the tape ---------------------------------------------------------------------------------- */

function beginLesson(seed) {
  const words = ["practice", "--rules", rulesForLearning(), "--seed", String(seed)];
  const found = runJson([...words, "--json"]);
  if (!found) return showFailure();
  const texts = { marks: run([...words, "--sheet", "-"]).out, why: run([...words, "--key", "-"]).out };
  Object.assign(lesson, { seed, sheet: found.sheet, key: found.key, texts, at: 0, right: 0, asked: 0 });
  return showLesson();
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
    if (i % SIXTEENTHS === 0) figure.append(draw("text", { x: x + 4, y: 74 }, String(from + i / SIXTEENTHS)));
  }
  const x = 12 + (at - from * SIXTEENTHS) * 10;
  figure.append(
    draw("path", { class: "pointer", d: `M${x} 25l-9 -18h18z` }),
    draw("text", { x: 330, y: 18, "text-anchor": "end" }, title),
  );
  return figure;
}

function lessonFacts(end, key) {
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

function lessonBar() {
  return [
    make("p", { class: "part" }, word("practiceBrakes")),
    make("p", { class: "count" }, `${lesson.at + 1} ${word("of")} ${lesson.sheet.wheel_ends.length}`),
  ];
}

const VERDICT_WORDS = {
  "in-adjustment": "inAdjustment",
  "out-of-adjustment": "outOfAdjustment",
  inoperative: "inoperative",
  undetermined: "undetermined",
};

/* The stroke by the tape's keys, then the verdict. */
function showLesson() {
  const end = lesson.sheet.wheel_ends[lesson.at],
    key = lesson.key.wheel_ends[lesson.at],
    host = make("div", { class: "answers" });
  const ask = (title) =>
    make(
      "div",
      { class: "head" },
      make("h1", {}, `${end.position}: ${title}`),
      make("p", { id: "step", tabindex: "-1" }),
    );
  const verdict = (stroke) =>
    paint({
      name: "lesson",
      bar: lessonBar(),
      top: lessonFacts(end, key),
      panel: [
        ask(word("yourVerdict")),
        keyRow(
          "names",
          Object.keys(VERDICT_WORDS).map((one) =>
            button([signFigure(STATES[one], 28), make("span", {}, word(VERDICT_WORDS[one]))], () =>
              markLesson(end, key, stroke, one),
            ),
          ),
        ),
        closeKey(showLearning),
      ],
    });
  paint({
    name: "lesson",
    bar: lessonBar(),
    top: lessonFacts(end, key),
    panel: [
      ask(word("stroke")),
      host,
      keyRow("two", [button(word("noStroke"), () => verdict(null)), button(word("close"), showLearning)]),
    ],
  });
  tapePicker(host, verdict);
}

function markLine(name, right, text) {
  return make(
    "div",
    { class: "verdict " + (right ? "good" : "bad") },
    signFigure(right ? "good" : "bad", 44),
    make(
      "div",
      {},
      make("strong", {}, (name ? name + ": " : "") + word(right ? "right" : "wrong")),
      make("span", {}, text),
    ),
  );
}

function markLesson(end, key, stroke, verdict) {
  const marks = [
    [word("stroke"), stroke || "–", key.applied_stroke || "–"],
    [word("verdict"), verdict, key.verdict],
  ];
  const shown = (text) => (VERDICT_WORDS[text] ? word(VERDICT_WORDS[text]) : text);
  const lines = marks.map(([name, given, wanted]) => {
    const right = given === wanted;
    lesson.asked++;
    lesson.right += right ? 1 : 0;
    return markLine(name, right, right ? shown(wanted) : `${shown(given)} → ${shown(wanted)}`);
  });
  const last = lesson.at + 1 === lesson.sheet.wheel_ends.length;
  paint({
    name: "marks",
    bar: lessonBar(),
    top: [
      make("h1", {}, end.position),
      ...lines,
      ...linesAbout(lesson.texts.why, end.position).map((text) => make("p", { class: "say" }, text)),
      make("p", { class: "say big" }, `${word("yourScore")}: ${lesson.right} ${word("of")} ${lesson.asked}`),
    ],
    panel: [
      keyRow("two", [
        button(word("close"), showLearning),
        button(
          last ? word("another") : word("next"),
          () => {
            if (last) return beginLesson(newSeed());
            lesson.at++;
            return showLesson();
          },
          "key primary",
        ),
      ]),
    ],
  });
}
