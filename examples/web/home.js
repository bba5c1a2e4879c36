// SPDX-License-Identifier: Apache-2.0
// Before and after an inspection: what is unfinished, a new one, files, settings.
"use strict";

/* A date does not break at its hyphens. */
function titleParts(entry) {
  return titleOf(entry)
    .split(", ")
    .flatMap((part, i) => [i > 0 ? ", " : null, make("span", { class: "whole-word" }, part)])
    .filter(Boolean);
}

function recordKey(entry) {
  const state = entry.state || "unknown";
  return button(
    [signFigure(entry.over ? state : "begun", 34), make("span", {}, titleParts(entry))],
    () => showEntry(entry),
    "key row tight",
  );
}

function recordList(title, entries) {
  return entries.length === 0
    ? []
    : [make("h2", {}, title), make("div", { class: "keys one" }, entries.map(recordKey))];
}

const EXAMPLE = {
  units: [
    { kind: "tractor", axles: 3 },
    { kind: "trailer", axles: 2 },
  ],
};

function showHome() {
  stopTicking();
  const entries = keptRecords();
  paint({
    name: "home",
    bar: [],
    top: [
      make("h1", {}, word("title")),
      make("p", { class: "say" }, word("offline")),
      entries.length === 0 ? vehicleStrip(EXAMPLE, null) : null,
      storageWorks ? null : make("p", { class: "say refused" }, word("notKept")),
      ...recordList(
        word("unfinished"),
        entries.filter((entry) => !entry.over),
      ),
      ...recordList(
        word("finished"),
        entries.filter((entry) => entry.over),
      ),
    ],
    panel: [
      keyRow("one", [button(word("fresh"), chooseRules, "key primary")]),
      keyRow("names", [
        button(word("importFile"), importFile),
        button(word("learn"), showLearning),
        button(word("settings"), () => showSettings(showHome)),
      ]),
    ],
  });
}

/* An unfinished one goes on with one tap more: the break may have changed what is known. */
function showEntry(entry) {
  app.entry = entry;
  const state = entry.over ? entry.state : "begun";
  paint({
    name: "entry",
    top: [
      make(
        "div",
        { class: "verdict " + state },
        signFigure(state, 56),
        make(
          "div",
          {},
          make("h1", {}, titleParts(entry)),
          make("span", {}, word(entry.over ? "finishedOne" : "unfinishedOne")),
        ),
      ),
      make("p", { class: "say" }, word("bestEffort")),
    ],
    panel: [
      keyRow("one", [
        button(entry.over ? word("see") : word("goOn"), () => beginInspection(entry), "key primary"),
      ]),
      keyRow("names", [
        button(word("report"), () => showReport(entry, () => showEntry(entry))),
        button(word("saveFile"), saveRecordFile),
        button(word("again"), () => beginFrom(entry)),
        button(word("remove"), () => confirmRemoval(entry)),
        button(word("home"), showHome),
      ]),
    ],
  });
}

function confirmRemoval(entry) {
  paint({
    name: "remove",
    top: [
      make("h1", {}, word("removeSure")),
      make("p", { class: "say big" }, titleParts(entry)),
      button(
        word("removeYes"),
        () => {
          removeRecord(entry.name);
          showHome();
        },
        "key odd",
      ),
    ],
    panel: [keyRow("one", [button(word("cancel"), () => showEntry(entry), "key primary")])],
  });
}

function newEntry(options) {
  return { name: newName(), record: "", over: false, state: "unknown", options };
}

/* The vehicle, its chambers and arms as they were; the readings are new. */
function beginFrom(entry) {
  beginInspection(newEntry([]), entry.record);
}

/* --- The rules ----------------------------------------------------------------------------------------- */

function ruleSets() {
  return call({ do: "about", language: LANGUAGES[language] }).rules || [];
}

function beginBy(rules, airRules) {
  settings.rules = rules;
  settings.airRules = airRules;
  saveSettings();
  askToPersist();
  beginInspection(newEntry(["--rules", rules, ...(airRules ? ["--air-rules", airRules] : [])]));
}

function ruleKey(one, press) {
  return button([make("strong", {}, one.title), make("small", {}, one.id)], press, "key row");
}

function chooseRules() {
  const sets = ruleSets(),
    last = sets.find((one) => one.id === settings.rules);
  paint({
    name: "rules",
    top: [
      make("h1", {}, word("chooseRules")),
      make(
        "div",
        { class: "keys one" },
        sets.filter((one) => one.strokes).map((one) => ruleKey(one, () => chooseAirRules(one, sets))),
      ),
    ],
    panel: [
      last
        ? keyRow("one", [
            button(
              [
                make("strong", {}, word("lastTime")),
                make("small", {}, [last.title, settings.airRules].filter(Boolean).join(" + ")),
              ],
              () => beginBy(settings.rules, settings.airRules),
              "key primary row",
            ),
          ])
        : null,
      keyRow("one", [button(word("back"), showHome)]),
    ],
  });
}

function chooseAirRules(rules, sets) {
  const near = sets.filter(
    (one) => one.air && one.id !== rules.id && one.id.slice(0, 3) === rules.id.slice(0, 3),
  );
  paint({
    name: "air",
    top: [
      make("h1", {}, word("airRules")),
      make(
        "div",
        { class: "keys one" },
        near.map((one) => ruleKey(one, () => beginBy(rules.id, one.id))),
      ),
    ],
    panel: [
      keyRow("one", [
        button(
          [make("strong", {}, word("sameRules")), make("small", {}, rules.title)],
          () => beginBy(rules.id, null),
          "key primary row",
        ),
        button(word("back"), chooseRules),
      ]),
    ],
  });
}

/* --- Files --------------------------------------------------------------------------------------------- */

/* What is no record, the command refuses when it is taken up; it is kept only if it can be. */
function importText(text) {
  const record = recordObject(text);
  if (typeof record.record !== "string") return showFailure();
  const entry = { ...newEntry([]), record: text };
  const reply = call({ do: "begin", language: LANGUAGES[language], name: "record.json", record: text });
  if (reply.error || reply.status === 2)
    return showFailure((reply.said || []).map((item) => item.text).join(" "));
  keepRecord(entry);
  keepOnDisk(entry, () => showEntry(entry));
  return null;
}

function showFailure(more) {
  paint({
    name: "failed",
    top: [make("h1", {}, word("failed")), more ? make("p", { class: "say" }, more) : null],
    panel: [closeKey(showHome)],
  });
}

function importFile() {
  const field = make("input", {
    type: "file",
    accept: ".json,application/json",
    onchange: () => {
      if (field.files.length > 0) field.files[0].text().then(importText, () => showFailure());
    },
  });
  field.click();
}

/* --- Settings ------------------------------------------------------------------------------------------ */

function applySettings() {
  setLanguage(settings.language === null ? languageOfBrowser() : settings.language);
  document.body.classList.toggle("left", settings.leftHand);
  document.documentElement.classList.toggle("sun", settings.sun);
}

function switchKey(name, key, close) {
  return button(
    [make("span", {}, word(key)), make("b", {}, settings[name] ? word("on") : word("off"))],
    () => {
      settings[name] = !settings[name];
      saveSettings();
      applySettings();
      showSettings(close);
    },
    "key row",
    { "aria-pressed": String(settings[name]) },
  );
}

/* The language of the questions changes with the next start of the record; its answers stay. */
function chooseLanguage(at, close) {
  settings.language = at;
  saveSettings();
  applySettings();
  if (close === showQuestion) beginInspection(app.entry);
  else showSettings(close);
}

function showSettings(close) {
  paint({
    name: "settings",
    top: [
      make("h1", {}, word("settings")),
      make(
        "div",
        { class: "keys one" },
        switchKey("leftHand", "leftHand", close),
        switchKey("sun", "sun", close),
        switchKey("speak", "speakOn", close),
        switchKey("sound", "sound", close),
        switchKey("vibration", "vibration", close),
      ),
    ],
    panel: [
      make("h2", {}, word("language")),
      keyRow(
        "three",
        LANGUAGE_NAMES.map((name, at) =>
          button(name, () => chooseLanguage(at, close), "key", {
            "aria-pressed": String(at === language),
            lang: LANGUAGES[at],
          }),
        ),
      ),
      closeKey(close),
    ],
  });
}
