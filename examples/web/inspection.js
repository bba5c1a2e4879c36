// SPDX-License-Identifier: Apache-2.0
// The walk-round: one question a screen. What is asked, said and judged comes from the command.
"use strict";

const app = { entry: null, reply: null, part: "", subject: "", undo: null, way: null, busy: false };

function run(words) {
  return call({ do: "run", arguments: words, language: LANGUAGES[language] });
}

function runJson(words) {
  try {
    return JSON.parse(run(words).out);
  } catch (broken) {
    return null;
  }
}

/* `last`: the record of the vehicle's last inspection. */
function beginInspection(entry, last) {
  app.entry = entry;
  app.subject = null;
  const options = [...(entry.record === "" ? entry.options : []), ...(last ? ["--from", "last.json"] : [])];
  takeReply(
    call({
      do: "begin",
      language: LANGUAGES[language],
      name: fileNameOf(entry.record || last || "", ".json"),
      record: entry.record,
      arguments: options,
      files: last ? { "last.json": last } : {},
    }),
  );
}

function answer(line) {
  if (app.busy) return;
  app.subject = app.reply.question ? app.reply.question.end : null;
  takeReply(call({ do: "answer", line }));
}

/* The record is kept before the next question shows. What a person would type is on keys here. */
function takeReply(reply) {
  app.busy = true;
  app.reply = { ...reply, said: (reply.said || []).filter((item) => item.kind !== "typed") };
  if (reply.record) app.entry.record = reply.record;
  app.entry.over = Boolean(reply.over) && reply.status !== 2;
  app.entry.state = stateOfVehicle(reply);
  const show = () => {
    app.busy = false;
    app.way = null;
    if (staysAtClues(reply.question)) showClue();
    else if (reply.question) showQuestion();
    else if (reply.vehicle) showEnd();
    else showFailure((reply.said || []).map((item) => item.text).join(" "));
  };
  if (!reply.record) return show();
  keepRecord(app.entry);
  return keepOnDisk(app.entry, show);
}

/* The worst of what the command paints. */
function stateOfVehicle(reply) {
  if (!reply.outcome) return "open";
  const paints = [reply.outcome.air, reply.outcome.strokes].filter(Boolean).map((one) => one.paint);
  return ["bad", "open", "edge", "good"].find((one) => paints.includes(one)) || "open";
}

/* --- What was said ------------------------------------------------------------------------------------- */

/* "stroke 1 5/8, limit 1 3/4, 1/8 to spare: in-adjustment": the word of the verdict is behind the last colon. */
function verdictCard(text, end, noted) {
  const figures = text.slice(0, -end.says.length).replace(/[\s\u00a0]*:[\s\u00a0]*$/, "");
  return make(
    "div",
    { class: "verdict " + stateOf(end) },
    signFigure(stateOf(end), 48),
    make(
      "div",
      {},
      noted ? make("p", { class: "noted" }, end.position + " ", reading(noted)) : null,
      make("strong", {}, (noted ? "" : end.position + " ") + end.says),
      make("span", {}, figures),
    ),
  );
}

function paragraph(item) {
  return make(
    "p",
    { class: "say " + item.kind },
    item.label ? [make("b", {}, item.label + ": "), item.text] : item.text,
  );
}

const SIGNED = { refused: "✕ ", warning: "▲ " };

/* The part is in the bar. */
function isLeftOut(item, question) {
  return item.kind === "heading" && item.text.endsWith(question.part.title);
}

/* Before the first heading of a new record is what a terminal needs. */
function forPage(said, question) {
  const first = said.findIndex((item) => item.kind === "heading");
  return question.id === "cautions" && first > 0 ? said.slice(first) : said;
}

/* What the answer did comes first; then what is to be known before the question, its own details too. */
function saidBlocks(said, question) {
  const blocks = { first: [], then: [] },
    end = endOf(app.subject);
  const verdict =
    end && end.says ? said.find((item) => item.kind === "detail" && item.text.endsWith(end.says)) : null;
  const noted = said.find((item) => item.kind === "noted");
  if (verdict) blocks.first.push(verdictCard(verdict.text, end, noted && noted.text));
  const instructed = said.some((item) => item.kind === "step");
  for (const item of said) {
    if (item === verdict || isLeftOut(item, question) || (item === noted && verdict)) continue;
    if (item.kind === "noted")
      blocks.first.push(
        make(
          "p",
          { class: "noted" + (instructed || item.text.length > 16 ? " long" : "") },
          make("span", { "aria-hidden": "true" }, "✓ "),
          reading(item.text),
        ),
      );
    else if (SIGNED[item.kind])
      blocks.first.push(
        make(
          "p",
          { class: "say " + item.kind },
          make("b", { "aria-hidden": "true" }, SIGNED[item.kind]),
          item.text,
        ),
      );
    else (item.kind === "detail" && blocks.then.length === 0 ? blocks.first : blocks.then).push(paragraph(item));
  }
  return blocks;
}

function endOf(position) {
  return (
    (position && app.reply.vehicle && app.reply.vehicle.ends.find((one) => one.position === position)) || null
  );
}

function buzzFor(said) {
  const kinds = said.map((item) => item.kind),
    end = endOf(app.subject);
  if (kinds.includes("refused") || kinds.includes("warning")) buzz("open");
  else if (end && end.verdict && said.some((item) => item.text.endsWith(end.says)))
    buzz({ good: "good", bad: "bad" }[stateOf(end)] || "open");
}

/* --- The question -------------------------------------------------------------------------------------- */

const DRAWN = [
  "chamber",
  "stroke_class",
  "rated_stroke",
  "marked_limit",
  "adjuster",
  "arm_length",
  "released",
  "applied",
];

function drawnPart(question) {
  return question.end && DRAWN.includes(question.id) ? question.id : null;
}

function stampOf(position) {
  const end = endOf(position);
  return end && end.chamber ? end.chamber.split("/")[0] : "";
}

function barOf(reply) {
  const at = reply.progress || { at: 0, of: 1 },
    part = reply.question.part;
  return [
    make("p", { class: "part" }, `${part.number}/${part.of} ${reply.question.check_title || part.title}`),
    make("p", { class: "count" }, `${at.at} ${word("of")} ${at.of}`),
    make("progress", { value: at.at, max: Math.max(1, at.of), "aria-label": word("progress") }),
  ];
}

function navigation() {
  const item = (sign, key, press, empty) =>
    button(
      [make("span", { class: "icon", "aria-hidden": "true" }, sign), make("small", {}, word(key))],
      press,
      "key tool",
      { disabled: empty },
    );
  return make(
    "nav",
    { "aria-label": word("more") },
    item("◀", "back", goBack),
    item("▦", "map", showMap, app.reply.vehicle.ends.length === 0),
    item("?", "help", showHelp),
    item("≡", "more", showMore),
  );
}

function goBack() {
  if (app.undo && app.undo()) return;
  answer("<");
}

function speakLines(question) {
  const steps = question.speak.filter((line) => line.label);
  return make(
    "ol",
    { class: "speak" },
    steps.map((line) => make("li", {}, make("b", {}, line.label + ": "), line.text)),
  );
}

function keepControl(question) {
  return make(
    "div",
    { class: "keep" },
    make("p", {}, word("keepHint")),
    button(`${word("keep")}: ${question.doubted}`, () => answer(question.keep), "key odd"),
  );
}

function showQuestion() {
  const reply = app.reply,
    question = reply.question,
    blocks = saidBlocks(forPage(reply.said, question), question),
    host = make("div", { class: "answers" });
  const odd = question.asked === "keep" || question.asked === "keep-yes-no",
    part = drawnPart(question);
  const speak = settings.speak && question.speak && question.speak.length > 0 ? speakLines(question) : null;
  const strip =
    (reply.vehicle.ends || []).length > 0
      ? button([vehicleStrip(reply.vehicle, question.end)], showMap, "strip-key", { "aria-label": word("map") })
      : null;
  stopTicking();
  buzzFor(reply.said);
  paint({
    name: "question",
    bar: barOf(reply),
    top: [
      storageWorks ? null : make("p", { class: "say refused" }, word("notKept")),
      ...blocks.first,
      odd ? keepControl(question) : null,
      strip,
      speak,
      ...blocks.then,
      part ? make("div", { class: "scene" }, chamberDrawing(part, stampOf(question.end))) : null,
    ],
    panel: [
      make(
        "div",
        { class: "head" },
        make("h1", { id: "question" }, titleOfQuestion(question)),
        make("p", { id: "step", tabindex: "-1" }),
      ),
      host,
      enterKey(question, odd),
      navigation(),
    ],
  });
  if (odd) offerAgain(host, question);
  else fillAnswers(host, question);
}

/* The key that keeps an odd answer is above; the keys of an answer come back with a tap of their own. */
function offerAgain(host, question) {
  const again = () => (question.asked === "keep-yes-no" ? answer("<") : fillAnswers(host, question));
  app.undo = null;
  host.replaceChildren(keyRow("one", [button(word("changeAnswer"), again, "key primary")]));
}

function enterKey(question, odd) {
  if (odd || !question.default) return null;
  return button(
    [make("span", { "aria-hidden": "true" }, "↵ "), question.default.says],
    () => answer(""),
    question.timed ? "key enter later" : "key enter",
  );
}

function titleOfQuestion(question) {
  return (question.end ? question.end + " " : "") + question.title;
}

function neverKey(question) {
  return question.never ? button(question.never, () => answer(question.never), "key word") : null;
}

/* One word is a step to be done: the way out of it is a key, too. */
function wordKeys(question) {
  const words = question.words.map((one) => one.word),
    only = words.length === 1;
  const layout = only ? "one" : words.length === 3 && words.every((one) => one.length < 9) ? "three" : "names";
  const out = only && question.skip && !question.default ? button(word("skip"), () => answer("skip")) : null;
  return [
    keyRow(
      layout,
      words.map((one) => button(one, () => answer(one), only ? "key primary" : "key")),
    ),
    out,
  ].filter(Boolean);
}

/* The ways there are to answer a question; the first one is shown unless another was chosen. */
function waysOf(question) {
  switch (question.kind) {
    case "length":
      return question.id === "division"
        ? ["divisions", "text"]
        : settings.mm
          ? ["mm", "tape", "text"]
          : ["tape", "mm", "text"];
    case "pressure":
      return settings.kpa ? ["kpa", "psi", "text"] : ["psi", "kpa", "text"];
    case "seconds":
      return ["clock", "digits", "text"];
    case "axles":
      return app.reply.vehicle.kind === "combination" ? ["units", "text"] : ["small", "text"];
    case "count":
      return ["small", "text"];
    case "number":
    case "built":
      return ["digits", "text"];
    case "chamber":
      return ["chamber", "text"];
    case "kept":
      return ["ends", "text"];
    case "words":
      return ["words", "text"];
    default:
      return ["text"];
  }
}

const LOW_CHECKS = ["warning", "supply-valve", "tractor-protection", "parking-valve"];

const FILLERS = {
  tape: (host) => tapePicker(host, answer),
  mm: (host) => metricPicker(host, answer),
  psi: (host, question) => gaugePicker(host, answer, neverKey(question), LOW_CHECKS.includes(question.check)),
  kpa: (host) => keypad(host, answer, [], "kPa"),
  digits: (host, question) => {
    const undo = keypad(host, answer, question.kind === "seconds" ? [":", "."] : ["."], "");
    const never = neverKey(question);
    if (never) host.append(never);
    return undo;
  },
  clock: (host, question) =>
    stopwatch(
      host,
      answer,
      { counts: question.timed.counts_down, seconds: Number(question.timed.seconds) || 60 },
      clockPlace(app.entry.name, question.place),
    ),
  units: (host) => unitsPicker(host, answer, growVehicle),
  small: (host) => {
    host.replaceChildren(
      keyRow(
        "wide",
        numberKeys([1, 2, 3, 4, 5, 6], (n) => answer(String(n))),
      ),
    );
  },
  divisions: (host) => {
    host.replaceChildren(
      keyRow(
        "wide",
        ["1/32", "1/16", "1/8", "1 mm"].map((one) =>
          button(reading(one), () => answer(one), "key", { "aria-label": one }),
        ),
      ),
    );
  },
  chamber: (host, question) => chamberPicker(host, answer, question.chambers, () => useWay("text"), beginClues),
  ends: (host) =>
    endsPicker(
      host,
      answer,
      app.reply.vehicle.ends.map((end) => end.position),
      word("allSame"),
    ),
  words: (host, question) => {
    host.replaceChildren(...wordKeys(question));
  },
  text: (host) => textField(host, answer, word("answer")),
};

function fillAnswers(host, question) {
  const way = app.way || waysOf(question)[0];
  app.undo = FILLERS[way](host, question) || null;
}

function useWay(way) {
  app.way = way;
  if (way === "mm" || way === "tape") settings.mm = way === "mm";
  if (way === "kpa" || way === "psi") settings.kpa = way === "kpa";
  saveSettings();
  showQuestion();
  if (way === "text") document.getElementById("field").focus();
}

/* The drawing above grows while its units are counted. */
function growVehicle(units) {
  let scene = document.querySelector("#top .growing");
  if (!scene) {
    scene = make("div", { class: "growing" });
    document.getElementById("top").append(scene);
  }
  const vehicle = {
    units: units.map((unit) => ({ kind: unit.dolly ? "dolly" : "", axles: unit.axles })),
    ends: [],
  };
  scene.replaceChildren(...(units.length > 0 ? [vehicleStrip(vehicle, "")] : []));
}

/* --- Beside the question ------------------------------------------------------------------------------- */

function closeKey(press) {
  return button(word("close"), press || showQuestion, "key primary");
}

function showHelp() {
  const question = app.reply.question,
    part = drawnPart(question);
  paint({
    name: "help",
    top: [
      make("h1", {}, titleOfQuestion(question)),
      part ? chamberDrawing(part, stampOf(question.end)) : null,
      make("p", { class: "say big" }, question.help),
      question.speak && question.speak.length ? speakLines(question) : null,
    ],
    panel: [closeKey()],
  });
}

function showMap() {
  const vehicle = app.reply.vehicle,
    subject = app.reply.question ? app.reply.question.end : null;
  const back = app.reply.question ? showQuestion : showEnd;
  paint({
    name: "map",
    top: [
      make("h1", {}, word("map")),
      make("p", { class: "say" }, word("mapHint")),
      vehicleMap(vehicle, subject, (position) => showWheelEnd(position, back)),
    ],
    panel: [closeKey(back)],
  });
}

function showWheelEnd(position, back) {
  const end = endOf(position) || { position },
    state = stateOf(end);
  const line = (name, value) =>
    value ? make("p", { class: "fact" }, make("span", {}, name), make("strong", {}, reading(value))) : null;
  const choices = app.reply.question
    ? [
        button(`${word("changeEnd")} ${position}`, () => answer("back " + position)),
        end.released ? button(`${word("againEnd")}: ${position}`, () => answer("again " + position)) : null,
        button(`${word("skipEnd")} ${position}`, () => answer("skip " + position)),
      ]
    : [];
  paint({
    name: "end",
    top: [
      make(
        "div",
        { class: "verdict " + state },
        signFigure(state, 56),
        make(
          "div",
          {},
          make("h1", {}, position),
          make("span", {}, end.says || (state === "open" ? word("openEnd") : end.verdict || "")),
        ),
      ),
      line(word("stamp"), end.chamber),
      line(word("released"), end.released),
      line(word("applied"), end.applied),
      chamberDrawing(end.applied ? "applied" : "released", stampOf(position)),
    ],
    panel: [make("div", { class: "keys one" }, choices.filter(Boolean)), closeKey(back)],
  });
}

const WAY_WORDS = {
  tape: "useTape",
  mm: "useMm",
  psi: "usePsi",
  kpa: "useKpa",
  clock: "useClock",
  text: "typeIt",
  digits: "typeIt",
};

function showMore() {
  const question = app.reply.question,
    now = app.way || waysOf(question)[0];
  const ways = waysOf(question).filter((way) => way !== now && WAY_WORDS[way]);
  paint({
    name: "more",
    top: [make("h1", {}, word("more"))],
    panel: [
      keyRow(
        "names",
        [
          question.skip ? button(word("skip"), () => answer("skip")) : null,
          question.end
            ? button(`${word("skipEnd")} ${question.end}`, () => answer("skip " + question.end))
            : null,
          ...ways.map((way) =>
            button(word(WAY_WORDS[way]) + (way === "digits" ? " (123)" : ""), () => useWay(way)),
          ),
          button(word("note"), showNote),
          button(word("showAll"), showEverything),
          button(word("saveFile"), saveRecordFile),
          button(word("settings"), () => showSettings(showQuestion)),
          button(word("home"), showHome),
        ].filter(Boolean),
      ),
      closeKey(),
    ],
  });
}

function showNote() {
  const host = make("div", { class: "answers" });
  paint({ name: "note", top: [], panel: [make("h1", {}, word("note")), host, closeKey()] });
  textField(host, (text) => answer("note " + text), word("noteText"));
}

/* What the command shows; the question stays. */
function showEverything() {
  const reply = call({ do: "answer", line: "show" });
  app.reply = { ...reply, said: [] };
  paint({
    name: "show",
    top: [make("h1", {}, word("showAll")), ...reply.said.map(paragraph)],
    panel: [closeKey()],
  });
}

function saveRecordFile() {
  const entry = app.entry,
    name = fileNameOf(entry.record, ".json"),
    type = "application/json";
  if (canShare(name, type)) shareFile(name, type, entry.record);
  else saveAs(name, type, entry.record);
}

/* --- The end ------------------------------------------------------------------------------------------- */

/* Without what the last answer did. */
function afterAnswer(said) {
  const first = said.findIndex((item) => ["good", "bad", "open", "edge"].includes(item.kind));
  return said.slice(Math.max(0, first));
}

function showEnd() {
  const reply = app.reply,
    outcome = reply.outcome,
    state = app.entry.state;
  const heads = outcome ? [outcome.strokes, outcome.air].filter(Boolean) : [];
  const shown = new Set(heads.map((head) => head.text));
  const said = afterAnswer(reply.said).filter((item) => item.text.trim() !== "" && !shown.has(item.text));
  stopTicking();
  buzz(state);
  paint({
    name: "over",
    bar: [make("p", { class: "part" }, titleOf(app.entry))],
    top: [
      ...heads.map((head, i) =>
        make(
          "div",
          { class: "verdict whole " + head.paint },
          signFigure(head.paint, i === 0 ? 60 : 44),
          make(i === 0 ? "h1" : "strong", {}, head.text),
        ),
      ),
      outcome && outcome.warning ? make("p", { class: "say big" }, outcome.warning) : null,
      vehicleStrip(reply.vehicle, null),
      make("p", { class: "say warning" }, word("saveNow")),
      ...said.map(paragraph),
    ],
    panel: [
      keyRow("names", [
        button(word("report"), () => showReport(app.entry, showEnd), "key primary"),
        button(word("saveFile"), saveRecordFile),
        button(word("map"), showMap),
        button(word("home"), showHome),
      ]),
    ],
  });
}
