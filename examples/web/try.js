// SPDX-License-Identifier: Apache-2.0
// Talks with the module in a terminal, to see its replies: node try.js page.wasm [--language fr] [OPTION...] < answers
// A line that begins with { is a request of its own; any other one is an answer of the walk-round.
"use strict";
const { readFileSync } = require("node:fs");
const { openModule } = require("./module.js");

const [file, ...rest] = process.argv.slice(2);
const call = openModule(readFileSync(file));
const show = reply => console.log(JSON.stringify(reply, null, 1));
const language = rest[0] === "--language" ? rest.splice(0, 2)[1] : "en";
show(call({ do: "begin", language, arguments: rest }));
for (const line of readFileSync(0, "utf8").split("\n").slice(0, -1))
  show(call(line.startsWith("{") ? JSON.parse(line) : { do: "answer", line }));
