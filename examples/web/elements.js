// SPDX-License-Identifier: Apache-2.0
// Makes elements without ever reading text as markup, and paints a screen of them.
"use strict";

const SVG = "http://www.w3.org/2000/svg";

function fill(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes || {})) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? "" : value);
  }
  for (const child of children.flat()) {
    if (child !== null && child !== undefined) element.append(child);
  }
  return element;
}

function make(name, attributes, ...children) {
  return fill(document.createElement(name), attributes, children);
}

function draw(name, attributes, ...children) {
  return fill(document.createElementNS(SVG, name), attributes, children);
}

function button(label, press, kind, more) {
  return make("button", { type: "button", class: kind || "key", onclick: press, ...more }, label);
}

/* A fraction as it is read: 2 1/8 with a small 1/8. Screen readers and tests get the plain text. */
function reading(text) {
  const parts = /^(\d+ )?(\d+)\/(\d+)(.*)$/.exec(text);
  if (!parts) return [text];
  return [
    parts[1] || "",
    make("span", { class: "fraction" }, make("sup", {}, parts[2]), "/", make("sub", {}, parts[3])),
    parts[4],
  ];
}

/* One screen: what was said above, the question and its answers in the lower half. The heading gets the focus. */
function paint(screen) {
  const top = document.getElementById("top"),
    panel = document.getElementById("panel");
  document.body.dataset.screen = screen.name;
  document.getElementById("bar").replaceChildren(...(screen.bar || []));
  top.replaceChildren(...(screen.top || []).filter(Boolean));
  panel.replaceChildren(...screen.panel.filter(Boolean));
  window.scrollTo(0, 0);
  const heading = document.querySelector("#panel h1, #top h1");
  if (heading && screen.focus !== false) {
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
  }
}

/* Said once by a screen reader, shown nowhere else. */
function announce(text) {
  const live = document.getElementById("live");
  live.textContent = "";
  live.textContent = text;
}

const BUZZ = {
  good: 40,
  edge: [60, 60, 60],
  bad: [220, 90, 220, 90, 220],
  open: [120, 90, 120],
  over: [500, 150, 500],
};

function buzz(kind) {
  if (settings.vibration && navigator.vibrate) navigator.vibrate(BUZZ[kind]);
}
