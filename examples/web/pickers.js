// SPDX-License-Identifier: Apache-2.0
// Ways to answer by taps alone: a tape and a gauge of two taps, a keypad, the units of a vehicle, the mark of a
// chamber. Each fills `host`, and calls `send` with the text that a person would type. It returns what Back undoes.
"use strict";

const SIXTEENTHS = 16;

function keyRow(kind, keys) {
  return make("div", { class: "keys " + kind, role: "group" }, keys);
}

/* Beside the question: what the keys are now, and what was picked so far. */
function setStep(text, picked, focus) {
  const step = document.getElementById("step");
  step.replaceChildren(...[text || null, picked ? make("strong", {}, " " + picked) : null].filter(Boolean));
  if (focus) step.focus({ preventScroll: true });
}

function greatestDivisor(a, b) {
  return b === 0 ? a : greatestDivisor(b, a % b);
}

/* 2 and 6 sixteenths is "2 3/8". */
function mixed(whole, sixteenths) {
  const divisor = greatestDivisor(sixteenths, SIXTEENTHS);
  const fraction = sixteenths === 0 ? "" : `${sixteenths / divisor}/${SIXTEENTHS / divisor}`;
  return [whole > 0 || fraction === "" ? String(whole) : "", fraction].filter(Boolean).join(" ");
}

/* A mark of the tape: the longer, the rounder its fraction. */
function markKey(whole, sixteenths, send) {
  const text = mixed(whole, sixteenths),
    length = 16 / greatestDivisor(sixteenths, SIXTEENTHS) || 1;
  const size = sixteenths === 0 ? 1 : length;
  return button(
    [
      make("span", { class: "tick tick-" + size }),
      make("span", {}, reading(sixteenths === 0 ? text : mixed(0, sixteenths))),
    ],
    () => send(text),
    "key mark",
    { "aria-label": text },
  );
}

/* Two taps: the keys that `first` makes, then those that `second` makes of the value that was pressed. */
function twoSteps(host, first, second) {
  let begun = false;
  const begin = (focus) => {
    begun = false;
    setStep(first.title, null, focus);
    host.replaceChildren(
      ...first.keys((value) => {
        begun = true;
        setStep(second.title, second.says(value), true);
        host.replaceChildren(second.keys(value));
      }),
    );
  };
  begin(false);
  return () => {
    if (!begun) return false;
    begin(true);
    return true;
  };
}

function tapePicker(host, send) {
  return twoSteps(
    host,
    {
      title: word("wholeInches"),
      keys: (next) => [
        keyRow(
          "tape wide",
          [...Array(12).keys()].map((n) =>
            button([make("span", { class: "tick tick-1" }), make("span", {}, n)], () => next(n), "key mark", {
              "aria-label": `${n} ${word("inches")}`,
            }),
          ),
        ),
      ],
    },
    {
      title: word("sixteenths"),
      says: (whole) => `${whole}″`,
      keys: (whole) =>
        keyRow(
          "tape",
          [...Array(SIXTEENTHS).keys()].map((n) => markKey(whole, n, send)),
        ),
    },
  );
}

function numberKeys(numbers, press, unit) {
  return numbers.map((n) =>
    button(String(n), () => press(n), "key", { "aria-label": unit ? `${n} ${unit}` : null }),
  );
}

/* Ten keys from `from` on, each an answer in that unit. */
function tenKeys(from, unit, send) {
  return keyRow(
    "wide",
    [...Array(10).keys()].map((n) =>
      button(String(from + n), () => send(from + n), "key", { "aria-label": `${from + n} ${unit}` }),
    ),
  );
}

function metricPicker(host, send, most = 16) {
  return twoSteps(
    host,
    {
      title: word("centimetres"),
      keys: (next) => [keyRow("wide", numberKeys([...Array(most).keys()], next, "cm"))],
    },
    {
      title: word("millimetres"),
      says: (cm) => `${cm} cm`,
      keys: (cm) => tenKeys(cm * 10, "mm", (mm) => send(`${mm} mm`)),
    },
  );
}

/* Tens, then the rest; `low` begins where valves close. What is rarer is behind the last key. */
function gaugePicker(host, send, never, low) {
  const tens = (from, count) => [...Array(count).keys()].map((n) => (from + n) * 10),
    common = tens(low ? 0 : never ? 5 : 3, never ? 10 : 11);
  const rare = tens(0, 19).filter((n) => !common.includes(n));
  const more = (next) =>
    button("…", () => host.replaceChildren(keyRow("wide", numberKeys(rare, next, "psi"))), "key", {
      "aria-label": word("otherPressure"),
    });
  return twoSteps(
    host,
    {
      title: "",
      keys: (next) => [keyRow("wide", [...numberKeys(common, next, "psi"), more(next), never].filter(Boolean))],
    },
    {
      title: word("ones"),
      says: (psi) => `${psi} psi`,
      keys: (psi) => tenKeys(psi, "psi", (found) => send(String(found))),
    },
  );
}

/* Digits, and what else the answer may hold; `unit` is added behind them. */
function keypad(host, send, more, unit) {
  let typed = "";
  const shown = make("output", { class: "typed", "aria-live": "polite" }, "\u2007");
  const show = () => {
    shown.textContent = (typed || "\u2007") + (typed && unit ? " " + unit : "");
  };
  const press = (text) => {
    typed = (typed + text).slice(0, 12);
    show();
  };
  const erase = button(
    "⌫",
    () => {
      typed = typed.slice(0, -1);
      show();
    },
    "key",
    { "aria-label": word("erase") },
  );
  const enter = button("✓", () => typed && send(typed + (unit ? " " + unit : "")), "key primary", {
    "aria-label": word("enter"),
  });
  const digits = [1, 2, 3, erase, 4, 5, 6, more[0] || null, 7, 8, 9, more[1] || null, null, 0, null, enter];
  host.replaceChildren(
    shown,
    keyRow(
      "pad",
      digits.map((key) =>
        key === null
          ? make("span", {})
          : typeof key === "object"
            ? key
            : button(String(key), () => press(String(key))),
      ),
    ),
  );
  return () => {
    if (typed === "") return false;
    typed = "";
    show();
    return true;
  };
}

/* Axles unit by unit from the front: "3 2", with d1 for a dolly. The drawing grows with it. */
function unitsPicker(host, send, grow) {
  const units = [];
  let dolly = false;
  const shown = make("output", { class: "typed", "aria-live": "polite" }, "\u2007");
  const text = () => units.map((unit) => (unit.dolly ? "d" : "") + unit.axles).join(" ");
  const flag = button(
    word("dolly"),
    () => {
      dolly = !dolly;
      show();
    },
    "key word",
    { "aria-pressed": "false" },
  );
  const show = () => {
    shown.textContent = text() || "\u2007";
    flag.setAttribute("aria-pressed", String(dolly));
    grow(units);
  };
  const add = (axles) => {
    units.push({ axles, dolly });
    dolly = false;
    show();
  };
  setStep(word("axlesOf"));
  host.replaceChildren(
    shown,
    keyRow("wide", [
      ...numberKeys([1, 2, 3, 4, 5], add),
      flag,
      button(
        "⌫",
        () => {
          units.pop();
          show();
        },
        "key",
        { "aria-label": word("erase") },
      ),
      button("✓", () => units.length > 0 && send(text()), "key primary", { "aria-label": word("done") }),
    ]),
  );
  return () => {
    if (units.length === 0) return false;
    units.pop();
    show();
    return true;
  };
}

/* The wheel ends that changed, or yes. */
function endsPicker(host, send, positions, yes) {
  const chosen = new Set();
  const done = button(
    yes,
    () => send(positions.filter((one) => chosen.has(one)).join(" ") || "yes"),
    "key primary",
  );
  const toggle = (position, key) => {
    if (!chosen.delete(position)) chosen.add(position);
    key.setAttribute("aria-pressed", String(chosen.has(position)));
    done.textContent = chosen.size > 0 ? word("done") : yes;
  };
  host.replaceChildren(
    keyRow(
      "wide",
      positions.map((position) => {
        const key = button(position, () => toggle(position, key), "key", { "aria-pressed": "false" });
        return key;
      }),
    ),
    done,
  );
  return () => false;
}

/* "clamp 30" is typed as 30; its long twin, 30L, only where a mark of that kind is usual. */
function chamberPicker(host, send, chambers, typeIt, notLegible) {
  const clamp = chambers.filter((one) => one.startsWith("clamp ")).map((one) => one.slice(6)),
    others = chambers.filter((one) => !one.startsWith("clamp "));
  let first = true;
  const keys = (list) => list.map((mark) => button(mark, () => send(mark)));
  const begin = () => {
    first = true;
    host.replaceChildren(
      keyRow("wide", keys(clamp)),
      keyRow("two", [button(word("otherChamber"), showOthers), button(word("notLegible"), notLegible)]),
    );
  };
  const showOthers = () => {
    first = false;
    setStep(word("otherChamber"), null, true);
    host.replaceChildren(
      keyRow("names", [
        ...keys(others),
        button(word("typeIt"), typeIt),
      ]),
    );
  };
  begin();
  return () => {
    if (first) return false;
    begin();
    return true;
  };
}

function textField(host, send, label) {
  const field = make("input", {
    type: "text",
    id: "field",
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
  });
  host.replaceChildren(
    make(
      "form",
      {
        class: "field",
        onsubmit: (event) => {
          event.preventDefault();
          if (field.value.trim() !== "") send(field.value);
        },
      },
      make("label", { for: "field", class: "hidden" }, label),
      field,
      make("button", { type: "submit", class: "key", "aria-label": word("enter") }, "✓"),
    ),
  );
  return () => false;
}
