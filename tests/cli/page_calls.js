// SPDX-License-Identifier: Apache-2.0
// Requests to the module inside of a page, a line of JSON each, and their replies: node page_calls.js PAGE MODULE_JS
// A line {"raw": TEXT} is given to an instance of its own, which stays until one has "fresh"; its reply is {"raw": TEXT, "memory": BYTES} or
// {"trap": TEXT}.
"use strict";
const { readFileSync } = require("node:fs");
const readline = require("node:readline");
const [pageFile, moduleFile] = process.argv.slice(2);
const { openModule } = require(moduleFile);

const page = readFileSync(pageFile, "utf8");
const bytes = Buffer.from(/<script type="application\/octet-stream;base64" id="module">([^<]*)/.exec(page)[1], "base64");
const call = openModule(bytes);
const code = new WebAssembly.Module(bytes);
if (WebAssembly.Module.imports(code).length > 0) throw new Error("the module has imports");

let kept = null;

function raw(text, fresh) {
  if (kept === null || fresh) {
    kept = new WebAssembly.Instance(code, {}).exports;
    kept._initialize();
  }
  try {
    const sent = Buffer.from(text, "latin1");
    const room = kept.room(sent.length);
    new Uint8Array(kept.memory.buffer, room, sent.length).set(sent);
    const at = kept.call(sent.length);
    const reply = Buffer.from(new Uint8Array(kept.memory.buffer, at, kept.size())).toString("utf8");
    return { raw: reply, memory: kept.memory.buffer.byteLength };
  } catch (error) {
    kept = null;
    return { trap: String(error) };
  }
}

readline.createInterface({ input: process.stdin }).on("line", line => {
  const request = JSON.parse(line);
  process.stdout.write(JSON.stringify("raw" in request ? raw(request.raw, request.fresh) : call(request)) + "\n");
});
