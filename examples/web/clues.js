// SPDX-License-Identifier: Apache-2.0
// A stamp that cannot be read: what else can be seen, one observation a screen. The command says which chambers that
// allows, and which observation comes next.
"use strict";

/* Where the page looks for signs, and the one that was picked from the list. What was seen is in the record. */
const looking = { place: null, chosen: null };

function beginClues() {
  Object.assign(looking, { place: app.reply.question.place, chosen: null });
  showClue();
}

/* True where whoever has begun stays with the clues; after a reload, whoever has seen something. */
function staysAtClues(question) {
  if (!question || question.place !== looking.place) looking.place = null;
  if (!question || !question.seen || question.asked !== "question") return false;
  return looking.place !== null || question.seen.length > 0;
}

function seenOf(clue) {
  return app.reply.question.seen.find((one) => one.clue === clue) || null;
}

/* One more observation, the last of all that are there. A value is a word's meaning, a text, or ? for "cannot tell". */
function saw(clue, value) {
  const others = app.reply.question.seen.filter((one) => one.clue !== clue);
  looking.chosen = null;
  answer("clues " + [...others, { clue, value }].map((one) => `${one.clue} ${one.value}`).join("; "));
}

function startAgain() {
  looking.chosen = null;
  answer("clues -");
}

/* Takes back the first tap of a reading, then the choice from the list, then the last observation. */
function leaveClue() {
  if (app.undo && app.undo()) return;
  const chosen = looking.chosen;
  looking.chosen = null;
  if (chosen) return showClue();
  if (app.reply.question.seen.length > 0) return answer("<");
  looking.place = null;
  return showQuestion();
}

/* What settles most; what cannot be seen gives way to what else is left. */
function nextClue(question) {
  const left = question.clues.filter((one) => !seenOf(one.clue)),
    next = question.identified && question.identified.next_observation;
  if (looking.chosen) return question.clues.find((one) => one.clue === looking.chosen);
  if (next === "nothing") return null;
  return left.find((one) => one.observation === next) || left[0] || null;
}

/* The sizes and letters of the rule set; a letter with its family. */
function stampKeys(question, send) {
  const marks = question.chambers.map((one) => (/[A-Z]$/.test(one) ? one : one.split(" ").pop()));
  return keyRow(
    "wide",
    [...new Set(marks)].map((mark) => button(mark.split(" ").pop(), () => send(mark), "key", { "aria-label": mark })),
  );
}

function fillClue(host, question, clue) {
  const send = (value) => saw(clue.clue, value);
  if (clue.words.length > 0)
    host.replaceChildren(
      keyRow(
        "names",
        clue.words.map((one) => button(one.word, () => send(one.means))),
      ),
    );
  else if (clue.clue === "stamp") host.replaceChildren(stampKeys(question, send));
  else if (settings.mm) return metricPicker(host, send, clue.clue === "diameter" ? 32 : 16);
  else return tapePicker(host, send);
  return null;
}

/* What the observations allow follows the line that names them. What is wrong comes first, a long list of
 * chambers last. */
function candidateLines(said, any) {
  const begin = said.map((item) => item.kind).lastIndexOf("noted"),
    found = any ? said.slice(begin + 1).filter((item) => item.kind !== "refused") : [];
  const chambers = found.filter((item) => item.kind === "detail").length,
    order = chambers > 3 ? ["warning", "text", "detail"] : ["warning", "detail", "text"];
  return [
    ...said.filter((item) => item.kind === "refused"),
    ...order.flatMap((kind) => found.filter((item) => item.kind === kind)),
  ].map(paragraph);
}

/* What was seen so far, in one line. */
function seenLine(question) {
  const seen = question.seen.filter((one) => one.says);
  if (seen.length === 0) return null;
  return make(
    "p",
    { class: "noted long" },
    make("span", { "aria-hidden": "true" }, "✓ "),
    seen.flatMap((one, i) => [i > 0 ? " · " : null, make("span", { class: "whole-word" }, one.says)]),
  );
}

function settledSize(settled) {
  return settled ? settled.split(" ")[1] || "" : "?";
}

function signOf(clue) {
  const seen = seenOf(clue);
  return seen ? make("b", {}, seen.says || seen.value) : null;
}

function chooseClue() {
  const question = app.reply.question;
  paint({
    name: "clue-list",
    top: [
      make("h1", {}, word("otherSign")),
      keyRow(
        "one",
        question.clues.map((one) =>
          button([make("span", {}, one.title), signOf(one.clue)].filter(Boolean), () => {
            looking.chosen = one.clue;
            showClue();
          }, "key row"),
        ),
      ),
    ],
    panel: [closeKey(showClue)],
  });
}

function clueKeys(settled, clue) {
  const take = `${word("takeChamber")} ${settled}`;
  return [
    settled ? keyRow("one", [button(take, () => answer(settled), "key primary")]) : null,
    keyRow("three", [
      clue ? button(word("cannotTell"), () => saw(clue.clue, "?")) : button(word("restart"), startAgain),
      button(word("otherSign"), chooseClue),
      button(word("back"), leaveClue),
    ]),
  ].filter(Boolean);
}

function showClue() {
  const question = app.reply.question,
    clue = nextClue(question),
    settled = question.settled,
    host = make("div", { class: "answers" });
  const title = clue ? clue.title : settled ? word("settled") : word("notSettled");
  paint({
    name: "clue",
    bar: [make("p", { class: "part" }, titleOfQuestion(question))],
    top: [
      make("div", { class: "scene" }, chamberDrawing(clue ? clue.clue : "chamber", settledSize(settled))),
      seenLine(question),
      ...candidateLines(app.reply.said, question.seen.length > 0),
    ],
    panel: [
      make(
        "div",
        { class: "head" },
        make("h1", { id: "question" }, title),
        make("p", { id: "step", tabindex: "-1" }),
      ),
      host,
      ...clueKeys(settled, clue),
    ],
  });
  app.undo = clue ? fillClue(host, question, clue) : null;
}
