// SPDX-License-Identifier: Apache-2.0
// Firefox, by its own protocol (WebDriver BiDi): the page opens from a file without an error, a whole inspection is
// answered on it, and its report is the command's own; the package for npm answers the conformance kit as published.
//   node --experimental-websocket test_firefox.js PAGE PATH_TO_RODTRAVEL FOLDER_OF_PACKAGE
"use strict";

const assert = require("node:assert");
const fs = require("node:fs");
const http = require("node:http");
const os = require("node:os");
const path = require("node:path");
const { spawn, spawnSync } = require("node:child_process");
const { pathToFileURL } = require("node:url");
const plans = require("./plans.js");

const [PAGE, COMMAND, PACKAGE] = process.argv.slice(2).map((one) => path.resolve(one));
const folder = fs.mkdtempSync(path.join(os.tmpdir(), "firefox-"));
const PATIENCE = 60000;
const TESTS = path.resolve(__dirname, "..");
const SERVED = {
  "/": null,
  "/rodtravel.mjs": path.join(PACKAGE, "rodtravel.mjs"),
  "/answers.mjs": path.join(TESTS, "bindings/javascript/answers.mjs"),
  "/digest.mjs": path.join(TESTS, "bindings/javascript/digest.mjs"),
  "/small.jsonl": path.join(TESTS, "conformance/small.jsonl"),
};

/* Firefox says on its errors where it listens. */
function launch() {
  const browser = spawn("firefox-esr", [
    "--headless",
    "--no-remote",
    "--remote-debugging-port=0",
    "--profile",
    path.join(folder),
  ]);
  const address = new Promise((found, failed) => {
    let text = "";
    browser.stderr.on("data", (bytes) => {
      text += bytes;
      const match = /WebDriver BiDi listening on (ws:\S+)/.exec(text);
      if (match) found(match[1]);
    });
    browser.on("exit", () => failed(new Error(text)));
    setTimeout(() => failed(new Error(`no address: ${text}`)), PATIENCE).unref();
  });
  return { browser, address };
}

/* Commands and their replies, by their numbers; what the page logs is kept. */
async function connect(address) {
  const socket = new WebSocket(address + "/session"),
    waiting = new Map(),
    errors = [];
  let number = 0;
  socket.onmessage = (event) => {
    const reply = JSON.parse(event.data);
    if (reply.method === "log.entryAdded" && reply.params.level === "error") errors.push(reply.params.text);
    if (reply.id) waiting.get(reply.id)(reply);
  };
  await new Promise((opened, failed) => {
    socket.onopen = opened;
    socket.onerror = failed;
  });
  const send = async (method, params) => {
    const id = ++number;
    const reply = await new Promise((found) => {
      waiting.set(id, found);
      socket.send(JSON.stringify({ id, method, params }));
    });
    assert.strictEqual(reply.type, "success", JSON.stringify(reply));
    return reply.result;
  };
  return { send, errors, close: () => socket.close() };
}

/* The value of an expression on the page, by way of JSON. */
async function evaluate(to, context, expression) {
  const done = await to.send("script.evaluate", {
    expression: `Promise.resolve(${expression}).then((value) => JSON.stringify(value === undefined ? null : value))`,
    target: { context },
    awaitPromise: true,
  });
  assert.strictEqual(done.type, "success", JSON.stringify(done.exceptionDetails));
  return JSON.parse(done.result.value);
}

/* What the person of a plan says, as the line that is typed. */
function lineFor(question, plan) {
  const wanted = plan[question.place] ?? plan[question.check ? `${question.check} ${question.id}` : question.id];
  if (question.asked !== "question") return question.keep;
  if (wanted === undefined && question.default) return "";
  if (wanted === undefined && question.kind !== "words") return "skip";
  const word = question.words.find((one) => one.means === wanted);
  return String(word ? word.word : (wanted ?? "yes"));
}

async function inspect(to, context) {
  const waits = "new Promise((done) => { const look = () => (app.busy ? setTimeout(look, 5) : done()); look(); })";
  await evaluate(to, context, 'beginBy("us-fmcsr", null)');
  for (let answers = 0; answers < 200; answers++) {
    const question = await evaluate(to, context, `${waits}.then(() => app.reply.question)`);
    if (!question) return;
    await evaluate(to, context, `(answer(${JSON.stringify(lineFor(question, plans.truck))}), null)`);
  }
  throw new Error("the walk-round has no end");
}

function reportOf(record) {
  fs.writeFileSync(path.join(folder, "inspection.json"), record);
  return spawnSync(COMMAND, ["report", "inspection.json", "--language", "en", "--html", "-"], {
    cwd: folder,
    encoding: "utf8",
  }).stdout;
}

async function answerInspection(to, context) {
  await to.send("browsingContext.navigate", { context, url: pathToFileURL(PAGE).href, wait: "complete" });
  await evaluate(to, context, "(settings.language = 0, applySettings(), showHome(), null)");
  await inspect(to, context);
  assert.strictEqual(await evaluate(to, context, "document.body.dataset.screen"), "over");
  assert.match(await evaluate(to, context, 'document.querySelector("#top h1").textContent'), /DEFECTIVE/);
  const record = await evaluate(to, context, "app.entry.record");
  assert.strictEqual(JSON.parse(record).wheel_ends.filter((end) => end.applied).length, 4);
  assert.strictEqual(await evaluate(to, context, "reportOf(app.entry.record)"), reportOf(record));
  await to.send("browsingContext.reload", { context, wait: "complete" });
  assert.deepStrictEqual(await evaluate(to, context, "keptRecords().map((one) => one.record)"), [record]);
}

/* Localhost counts as secure, which the digests of a browser ask for. */
async function serve() {
  const server = http.createServer((asked, answer) => {
    if (!(asked.url in SERVED)) return answer.writeHead(404).end();
    const file = SERVED[asked.url];
    answer.writeHead(200, { "content-type": file ? "text/javascript" : "text/html" });
    return answer.end(file ? fs.readFileSync(file) : "<!DOCTYPE html><title>-</title><link rel=icon href=data:,>");
  });
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  return server;
}

/* The published digest is of the answers in C. */
async function answerKit(to, context) {
  const server = await serve(),
    published = /^small \d+ \w+ (\w+)/m.exec(fs.readFileSync(path.join(TESTS, "conformance/digests.txt"), "utf8"))[1];
  const url = `http://localhost:${server.address().port}/`;
  const asked = `Promise.all([import("/rodtravel.mjs"), import("/digest.mjs"), fetch("/small.jsonl")])
    .then(async ([rt, { digestOf }, file]) => digestOf(rt, await file.text()))`;
  try {
    await to.send("browsingContext.navigate", { context, url, wait: "complete" });
    assert.strictEqual(await evaluate(to, context, asked), published);
  } finally {
    server.closeAllConnections();
    server.close();
  }
}

const ASKED = [
  ["a truck of two axles from a file in Firefox", answerInspection],
  ["the conformance kit in Firefox has the digest of the answers in C", answerKit],
];

async function main() {
  const { browser, address } = launch();
  console.log(`1..${ASKED.length}`);
  const to = await connect(await address);
  await to.send("session.new", { capabilities: {} });
  await to.send("session.subscribe", { events: ["log.entryAdded"] });
  const { contexts } = await to.send("browsingContext.getTree", {});
  for (const [at, [name, run]] of ASKED.entries()) {
    try {
      await run(to, contexts[0].context);
      assert.deepStrictEqual(to.errors, []);
      console.log(`ok ${at + 1} - ${name}`);
    } catch (error) {
      console.log(`not ok ${at + 1} - ${name}\n${String(error.stack).replace(/^/gm, "# ")}`);
      process.exitCode = 1;
    }
  }
  to.close();
  browser.removeAllListeners("exit");
  browser.on("exit", () => fs.rmSync(folder, { recursive: true, force: true }));
  browser.kill("SIGKILL");
}

main();
