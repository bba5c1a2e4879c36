// SPDX-License-Identifier: Apache-2.0
// For learners: tapes of an invented vehicle, sheets on paper, cards and limits, all made by the command.
"use strict";

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
        button(word("practiceBrakes"), chooseLevel),
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
