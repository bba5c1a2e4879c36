// SPDX-License-Identifier: Apache-2.0
// For learners: the checks in the cab as an examiner asks for them, a story a screen. Stories, answers and reasons are
// the command's.
"use strict";

const exam = { seed: 0, stories: [], at: 0, given: [], right: 0, asked: 0 };

function beginExam(seed) {
  const reply = call({ do: "checks", arguments: [rulesForLearning(), String(seed)], language: LANGUAGES[language] });
  if (!reply.stories) return showFailure(reply.text);
  Object.assign(exam, { seed, stories: reply.stories, at: 0, given: [], right: 0, asked: 0 });
  return askStory([make("p", { class: "say" }, reply.about), make("p", { class: "say" }, reply.caution)]);
}

function examBar() {
  return [
    make("p", { class: "part" }, word("practiceChecks")),
    make("p", { class: "count" }, `${exam.at + 1} ${word("of")} ${exam.stories.length}`),
  ];
}

/* The questions of a story one after the other; `before` is said above the first one. */
function askStory(before = []) {
  const story = exam.stories[exam.at],
    question = story.questions[exam.given.length];
  if (!question) return markStory(story);
  const choose = (choice) => {
    exam.given.push(choice);
    askStory();
  };
  return paint({
    name: "story",
    bar: examBar(),
    top: [...before, make("h2", {}, story.title), make("p", { class: "say big" }, story.text)],
    panel: [
      make("h1", {}, question.prompt),
      keyRow(
        question.choices.length === 2 ? "two" : "three",
        question.choices.map((one) => button(one.says, () => choose(one))),
      ),
      keyRow("two", [
        button(word("skip"), () => choose(null), "key word"),
        button(word("close"), showLearning, "key word"),
      ]),
    ],
  });
}

function markedLine(question, given) {
  const right = given !== null && given.word === question.right,
    wanted = question.choices.find((one) => one.word === question.right);
  exam.asked++;
  exam.right += right ? 1 : 0;
  return markLine(null, right, `${question.prompt} ${given ? given.says : "–"}${right ? "" : ` → ${wanted.says}`}`);
}

function markStory(story) {
  const last = exam.at + 1 === exam.stories.length,
    next = () => {
      if (last) return beginExam(newSeed());
      exam.at++;
      exam.given = [];
      return askStory();
    };
  const lines = story.questions.map((question, i) => markedLine(question, exam.given[i]));
  paint({
    name: "story-marks",
    bar: examBar(),
    top: [
      make("h1", {}, story.title),
      ...lines,
      make("p", { class: "say" }, story.why),
      make("p", { class: "say" }, story.action),
      make("p", { class: "say big" }, `${word("yourScore")}: ${exam.right} ${word("of")} ${exam.asked}`),
    ],
    panel: [
      keyRow("two", [
        button(word("close"), showLearning),
        button(last ? word("another") : word("next"), next, "key primary"),
      ]),
    ],
  });
}
