// SPDX-License-Identifier: Apache-2.0
// A stamp that cannot be read: what else can be seen, one observation a screen. The command says which chambers that
// allows, and which observation comes next.
"use strict";

const looking = { said: {}, unseen: [], chosen: null };

function beginClues() {
  Object.assign(looking, { said: {}, unseen: [], chosen: null });
  showClue();
}

/* What the command said of what was seen; of nothing it says nothing, whatever it said before. */
function answerToClues() {
  const { identified, settled } = app.reply.question,
    any = Object.keys(looking.said).length > 0;
  return any ? { next: identified && identified.next_observation, settled } : { next: null, settled: null };
}

/* All that was seen, as one line that a person would type. */
function askWhich() {
  const question = app.reply.question,
    seen = question.clues.filter((one) => looking.said[one.clue]).map((one) => looking.said[one.clue]);
  looking.chosen = null;
  if (seen.length > 0) app.reply = call({ do: "answer", line: `${question.clues_word} ${seen.join("; ")}` });
  showClue();
}

function saw(clue, text) {
  looking.said[clue] = text;
  askWhich();
}

/* What settles most; what cannot be seen gives way to what else is left. */
function nextClue(question) {
  const left = question.clues.filter((one) => !looking.said[one.clue] && !looking.unseen.includes(one.clue)),
    { next } = answerToClues();
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
  const send = (text) => saw(clue.clue, clue.before ? `${clue.before} ${text}` : text);
  if (clue.words.length > 0)
    host.replaceChildren(
      keyRow(
        "names",
        clue.words.map((one) => button(one.word, () => send(one.word))),
      ),
    );
  else if (clue.clue === "stamp") host.replaceChildren(stampKeys(question, send));
  else if (settings.mm) return metricPicker(host, send, clue.clue === "diameter" ? 32 : 16);
  else return tapePicker(host, send);
  return null;
}

/* What they are goes into the notes of the wheel end before the answer. */
function takeSettled() {
  const question = app.reply.question,
    seen = question.clues.map((one) => looking.said[one.clue]).filter(Boolean);
  app.reply = call({ do: "answer", line: `note ${question.clues_word}: ${seen.join("; ")}` });
  answer(question.settled);
}

/* What is wrong first; a long list of chambers last. */
function candidateLines(said) {
  const chambers = said.filter((item) => item.kind === "detail").length,
    order = chambers > 3 ? ["refused", "warning", "text", "detail"] : ["refused", "warning", "detail", "text"];
  return order.flatMap((kind) => said.filter((item) => item.kind === kind)).map(paragraph);
}

function settledSize(settled) {
  return settled ? settled.split(" ")[1] || "" : "?";
}

function chooseClue() {
  const question = app.reply.question;
  paint({
    name: "clue-list",
    top: [make("h1", {}, word("otherSign"))],
    panel: [
      keyRow(
        "one",
        question.clues.map((one) =>
          button([make("span", {}, one.title), make("b", {}, looking.said[one.clue] || "")], () => {
            looking.chosen = one.clue;
            showClue();
          }, "key row"),
        ),
      ),
      closeKey(showClue),
    ],
  });
}

function clueKeys(settled, clue) {
  const cannotTell = () => {
    delete looking.said[clue.clue];
    looking.unseen.push(clue.clue);
    askWhich();
  };
  const take = `${word("takeChamber")} ${settled}`;
  return [
    settled ? keyRow("one", [button(take, takeSettled, "key primary")]) : null,
    keyRow("three", [
      clue ? button(word("cannotTell"), cannotTell) : button(word("restart"), beginClues),
      button(word("otherSign"), chooseClue),
      button(word("back"), showQuestion),
    ]),
  ].filter(Boolean);
}

function showClue() {
  const question = app.reply.question,
    clue = nextClue(question),
    { settled } = answerToClues(),
    host = make("div", { class: "answers" });
  const title = clue ? clue.title : settled ? word("settled") : word("notSettled");
  const asked = Object.keys(looking.said).length > 0;
  paint({
    name: "clue",
    bar: [make("p", { class: "part" }, titleOfQuestion(question))],
    top: [
      make("div", { class: "scene" }, chamberDrawing(clue ? clue.clue : "chamber", settledSize(settled))),
      ...(asked ? candidateLines(app.reply.said) : []),
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
