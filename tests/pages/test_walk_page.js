// SPDX-License-Identifier: Apache-2.0
// Whole inspections on the page in a browser, by taps, without a network: nothing is lost, nothing is asked of a
// server, every key is large enough, and the report is the command's own.
//   NODE_PATH=FOLDER/node_modules node test_walk_page.js PAGE PATH_TO_RODTRAVEL
"use strict";

const assert = require("node:assert");
const fs = require("node:fs");
const http = require("node:http");
const os = require("node:os");
const path = require("node:path");
const { spawnSync } = require("node:child_process");
const { pathToFileURL } = require("node:url");
const plans = require("./plans.js");
const { open, openKept, PATIENCE } = require("./person.js");

const [PAGE, COMMAND] = process.argv.slice(2).map((one) => path.resolve(one));
const ADDRESS = pathToFileURL(PAGE).href;
const AXE = fs.readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const KEY = 72,
  GAP = 8,
  TAPS_MOST = 90,
  KILLS = Number(process.env.KILLS || 6);
const folder = fs.mkdtempSync(path.join(os.tmpdir(), "walk-page-"));
const tests = [];

function test(name, run) {
  tests.push({ name, run });
}

/* --- What every screen must be ------------------------------------------------------------------------- */

/* Keys that are too small or too near to each other, and what is wider than the screen. */
function measure([least, gap, width]) {
  const panel = document.getElementById("panel"); // what scrolls away under it may be behind it
  const boxes = [...document.querySelectorAll("button, a[href], input:not([type=file])")]
    .filter((key) => key.getClientRects().length > 0)
    .map((key) => ({
      name: key.textContent || key.id,
      box: key.getBoundingClientRect(),
      panel: panel.contains(key),
    }));
  const found = boxes
    .filter(({ box }) => box.width < least - 0.1 || box.height < least - 0.1)
    .map(({ name, box }) => `${name}: ${box.width} x ${box.height}`);
  boxes.forEach((one, i) =>
    boxes.slice(i + 1).forEach((two) => {
      const across = Math.max(one.box.left, two.box.left) - Math.min(one.box.right, two.box.right);
      const down = Math.max(one.box.top, two.box.top) - Math.min(one.box.bottom, two.box.bottom);
      if (one.panel === two.panel && across < gap - 0.1 && down < gap - 0.1)
        found.push(`${one.name} and ${two.name} are near`);
    }),
  );
  const wide = document.documentElement.scrollWidth - width;
  return wide > 0 ? [...found, `${wide} px wider than the screen`] : found;
}

async function checkScreen(page, name) {
  assert.deepStrictEqual(await page.evaluate(measure, [KEY, GAP, page.viewportSize().width]), [], name);
}

/* WCAG 2.2 A and AA, the contrast of AAA (7 to 1), and the checker's own advice. */
async function checkAccess(page, name) {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(AXE);
  const found = await page.evaluate(() =>
    axe.run({ exclude: ["iframe"] }, { rules: { "color-contrast-enhanced": { enabled: true } } }),
  );
  assert.ok(found.passes.length > 5, name);
  assert.deepStrictEqual(
    found.violations.map((one) => `${one.id}: ${one.nodes[0].html} ${one.nodes[0].failureSummary}`),
    [],
    name,
  );
}

async function checkPerson(person) {
  assert.deepStrictEqual(person.errors, []);
  assert.deepStrictEqual(
    [...new Set(person.requests)].filter((one) => one !== ADDRESS && !/^(about|blob):/.test(one)),
    [],
  );
}

/* The lower edge of what must be seen without scrolling, above the panel. */
async function isAbove(page, selector) {
  return page.evaluate((wanted) => {
    const one = document.querySelector(wanted);
    return (
      one !== null &&
      one.getBoundingClientRect().bottom <= document.getElementById("panel").getBoundingClientRect().top + 1
    );
  }, selector);
}

/* --- Whole inspections --------------------------------------------------------------------------------- */

async function download(page, press) {
  const [file] = await Promise.all([page.waitForEvent("download"), press()]);
  return fs.readFileSync(await file.path(), "utf8");
}

/* What the command says of the same record, which it finds by the same name. */
function reportOf(record, ...options) {
  fs.writeFileSync(path.join(folder, "inspection.json"), record);
  const done = spawnSync(COMMAND, ["report", "inspection.json", "--language", "en", ...options], {
    cwd: folder,
    encoding: "utf8",
  });
  assert.ok([0, 1, 3].includes(done.status), done.stderr);
  return done.stdout;
}

async function finish(page, person, head) {
  assert.strictEqual(await page.evaluate(() => document.body.dataset.screen), "over");
  assert.match(await page.locator("#top h1").textContent(), head);
  assert.ok(await isAbove(page, ".verdict.whole"));
  assert.doesNotMatch(await page.locator("#top").textContent(), /rodtravel|walkround|--back|\.json/);
  await checkScreen(page, "over");
  await checkAccess(page, "over");
  const record = await download(page, () =>
    page.getByRole("button", { name: "Save the record as a file" }).tap(),
  );
  assert.strictEqual(record, await person.record());
  await person.tapText("Report");
  assert.strictEqual(await page.locator("iframe").getAttribute("srcdoc"), reportOf(record, "--html", "-"));
  const saved = await download(page, () => page.getByRole("button", { name: "Save the report" }).tap());
  assert.strictEqual(saved, reportOf(record, "--html", "-"));
  return JSON.parse(record);
}

/* Each kind of question once by the checker of accessibility, every one by the ruler. */
function watcher(page, person) {
  const seen = new Set();
  return async (question) => {
    await checkScreen(page, question.place);
    const kind = `${question.kind} ${question.asked} ${question.id}`;
    if (!seen.has(kind)) await checkAccess(page, question.place);
    seen.add(kind);
    assert.strictEqual(await page.evaluate(() => document.activeElement.tagName), "H1", question.place);
    return true;
  };
}

test("a truck of two axles, offline, on a phone of 360 by 640", async () => {
  const { browser, page, person } = await open(ADDRESS);
  await checkAccess(page, "home");
  await person.begin("us-fmcsr");
  await person.walk(plans.truck, watcher(page, person));
  const record = await finish(page, person, /DEFECTIVE/);
  assert.deepStrictEqual(
    record.wheel_ends.map((end) => [end.position, end.released, end.applied]),
    [
      ["1L", "1 1/2", "3 1/8"],
      ["1R", "1 1/2", "3 1/4"],
      ["2L", "2 1/8", "4"],
      ["2R", "2 1/16", "4 1/8"],
    ],
  );
  await checkPerson(person);
  await browser.close();
});

for (const air of [null, "us-cdl"]) {
  test(`a combination of ten brakes, ${TAPS_MOST} taps beside the readings, air checks by ${air}`, async () => {
    const { browser, page, person } = await open(ADDRESS);
    await person.begin("us-fmcsr", air);
    await person.walk(plans.combination, async (question) => {
      await checkScreen(page, question.place);
      return true;
    });
    assert.strictEqual(person.readingTaps, 40);
    assert.ok(person.taps <= TAPS_MOST, `${person.taps} taps`);
    console.log(`# ${person.taps} taps beside ${person.readingTaps} of the readings`);
    const record = await finish(page, person, /ADJUSTMENT/);
    assert.strictEqual(record.wheel_ends.length, 10);
    assert.ok(
      record.wheel_ends.every((end) => end.applied),
      JSON.stringify(record),
    );
    await checkPerson(person);
    await browser.close();
  });
}

/* An old phone: the figures are told, and no bound is set to them. */
test("a truck on a processor that is six times slower", async () => {
  const { browser, context, page, person } = await open("about:blank");
  const slow = await context.newCDPSession(page);
  await slow.send("Emulation.setCPUThrottlingRate", { rate: 6 });
  page.setDefaultTimeout(6 * PATIENCE);
  const before = Date.now();
  await page.goto(ADDRESS);
  await page.locator("#panel .primary").waitFor();
  const start = Date.now() - before;
  let verdict = 0;
  await person.begin("us-fmcsr");
  await person.walk(plans.truck, async (question) => {
    if (question.place !== "1L applied") return true;
    await page.locator('.keys .mark[aria-label^="3 "]').tap();
    const tapped = Date.now();
    await page.locator('.keys .mark[aria-label="3 1/8"]').tap();
    await page.locator("#top .verdict").waitFor();
    verdict = Date.now() - tapped;
    return true;
  });
  assert.ok(verdict > 0);
  console.log(`# throttled: first screen ${start} ms, verdict ${verdict} ms after the last tap`);
  await finish(page, person, /DEFECTIVE/);
  await checkPerson(person);
  await browser.close();
});

test("the verdict of a brake is a word, a shape and figures above the next question's keys", async () => {
  const { browser, page, person } = await open(ADDRESS);
  let seen = 0;
  await person.begin("us-fmcsr");
  await person.walk(plans.truck, async (question) => {
    if (question.place !== "2L applied" && question.place !== "1R applied") return true;
    const bad = question.place === "1R applied",
      card = page.locator("#top .verdict");
    assert.match(
      await card.textContent(),
      bad ? /2R 4 1\/8 in.*out-of-adjustment.*over by 1\/16/ : /1L 3 1\/8 in.*in-adjustment/,
    );
    assert.strictEqual(await card.locator(bad ? "polygon" : "circle").count(), 1);
    assert.ok(await isAbove(page, "#top .verdict"), question.place);
    await page.locator('.keys .mark[aria-label^="4 "]').tap();
    assert.ok(await isAbove(page, "#top .verdict"), "at the sixteenths");
    await person.tapText("Back");
    seen++;
    return true;
  });
  assert.strictEqual(seen, 2);
  await browser.close();
});

/* --- Nothing is lost ----------------------------------------------------------------------------------- */

/* The same each time, and the next run's differ by one number. */
function chance(seed) {
  let state = seed;
  return () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return state / 2147483648;
  };
}

async function takeUp(page, person, kept) {
  assert.strictEqual(await page.evaluate(() => document.body.dataset.screen), "home");
  const entry = await page.evaluate(() => keptRecords()[0]);
  assert.strictEqual(entry.record, kept);
  await person.tap("#top .key.row");
  await person.tapText("Go on");
}

/* What the break may have changed is asked again, and may go into the record; what was answered stays there. */
function assertHolds(before, after) {
  const old = JSON.parse(before),
    now = JSON.parse(after);
  for (const end of old.wheel_ends) {
    const same = now.wheel_ends.find((one) => one.position === end.position);
    for (const key of ["chamber", "stroke_class", "adjuster", "released", "applied"])
      assert.strictEqual(same[key], end[key], key);
  }
  for (const key of ["unit", "date", "rules", "vehicle"]) assert.strictEqual(now[key], old[key], key);
}

test("a page that is loaded again at any question goes on with every answer", async () => {
  const { browser, page, person } = await open(ADDRESS);
  const random = chance(7);
  let breaks = 0;
  await person.begin("us-fmcsr");
  await person.walk(plans.truck, async () => {
    if (random() < 0.5 && breaks < 40) {
      const kept = await person.record();
      breaks++;
      await page.reload();
      await takeUp(page, person, kept);
      await person.question();
      assertHolds(kept, await person.record());
    }
    return true;
  });
  assert.ok(breaks >= 15, `${breaks} breaks`);
  await finish(page, person, /DEFECTIVE/);
  await browser.close();
});

test("a browser that is killed as soon as a question shows has the answer before it", async () => {
  const profile = path.join(folder, "profile"),
    random = chance(11);
  let kept = null,
    kills = 0,
    over = false;
  while (!over || kills < KILLS) {
    if (over) kept = null; // another vehicle
    const { context, page, person } = await openKept(ADDRESS, profile);
    const pid = Number(fs.readlinkSync(path.join(profile, "SingletonLock")).split("-").pop());
    if (kept === null) await person.begin("us-fmcsr");
    else {
      await page.waitForFunction((text) => keptRecords().some((one) => one.record === text), kept, {
        timeout: 5000,
      });
      await takeUp(page, person, kept);
    }
    let steps = 2 + Math.floor(random() * 9);
    await person.walk(plans.truck, async () => steps-- > 0 || kills >= KILLS);
    kept = await person.record();
    over = await page.evaluate(() => document.body.dataset.screen === "over");
    process.kill(pid, "SIGKILL");
    kills++;
    await context.close().catch(() => null);
    fs.rmSync(path.join(profile, "SingletonLock"), { force: true });
    if (over) assert.strictEqual(JSON.parse(kept).wheel_ends.filter((end) => end.applied).length, 4);
  }
});

test("a browser that keeps nothing is said to, and the walk-round works", async () => {
  const { browser, page, person } = await open("about:blank");
  await page.addInitScript(() => {
    Object.defineProperty(window, "localStorage", {
      get: () => {
        throw new Error("refused");
      },
    });
    Object.defineProperty(window, "indexedDB", { get: () => undefined });
  });
  await page.goto(ADDRESS);
  await person.begin("us-fmcsr");
  await person.tapText("yes");
  await person.question();
  assert.match(await page.locator("#top").textContent(), /keeps nothing/);
  await person.walk(plans.truck);
  assert.strictEqual(await page.evaluate(() => document.body.dataset.screen), "over");
  await browser.close();
});

/* --- Answers that are odd, wrong, or taken back -------------------------------------------------------- */

async function walkTo(person, place, plan = plans.truck) {
  await person.walk(plan, async (question) => question.place !== place);
  assert.strictEqual((await person.question()).place, place);
}

test("an odd reading is kept by another key in another place, or replaced", async () => {
  const { browser, page, person } = await open(ADDRESS);
  await person.begin("us-fmcsr");
  await walkTo(person, "1L applied");
  await person.read("1 1/16");
  const odd = page.locator(".odd"),
    question = await person.question();
  assert.strictEqual(question.asked, "keep");
  assert.match(await page.locator("#top .warning").first().textContent(), /./);
  assert.match(await odd.textContent(), /1 1\/16/);
  const [key, panel] = [await odd.boundingBox(), await page.locator("#panel").boundingBox()];
  assert.ok(key.y + key.height <= panel.y, `${key.y} and ${key.height}, above the answers at ${panel.y}`);
  await checkScreen(page, "keep");
  await checkAccess(page, "keep");
  const before = await person.record();
  await person.tapText("Change the answer");
  await person.read("3 1/8");
  assert.match(await page.locator("#top .verdict").textContent(), /1L 3 1\/8 in/);
  assert.notStrictEqual(await person.record(), before);
  await person.read("1 1/16");
  await person.tap(".odd");
  await person.question();
  assert.strictEqual(
    JSON.parse(await person.record()).wheel_ends.find((end) => end.position === "2L").applied,
    "1 1/16",
  );
  await browser.close();
});

/* The screen after a tap, once its answer is kept. */
async function clueTitle(page) {
  await page.waitForFunction(() => !app.busy);
  return page.locator("#panel h1").textContent();
}

const DIAMETER = /^What is the outside diameter/;

async function chooseDiameter(page, person) {
  await person.tapText("Another sign");
  await page.getByRole("button", { name: DIAMETER }).tap();
}

test("a stamp that is not legible: one observation a screen, until one chamber is left", async () => {
  const { browser, page, person } = await open(ADDRESS);
  const title = () => clueTitle(page),
    check = async (screen) => {
      await checkScreen(page, screen);
      await checkAccess(page, screen);
    };
  await person.begin("us-fmcsr");
  await walkTo(person, "1L chamber");
  await checkScreen(page, "chamber");
  await person.tapText("Not legible");
  assert.match(await title(), /holds the two halves/);
  await check("family");
  await person.tapText("clamp band");
  assert.match(await title(), /stamp/); // the command asks for it first
  await check("stamp");
  await person.tapText("Cannot tell");
  await title();
  await person.tapText("Another sign");
  await check("list of clues");
  await page.getByRole("button", { name: DIAMETER }).tap();
  await person.read("8 1/8");
  assert.match(await page.locator("#top").textContent(), /clamp 30 standard.*clamp 30 long.*strictest limit: 2\./);
  assert.strictEqual(await page.locator("#top .noted").textContent(), "✓ clamp band · diameter 8 1/8");
  assert.strictEqual(await page.locator("#panel .primary").textContent(), "Answer: clamp 30");
  assert.match(await title(), /shape have the air ports/);
  await check("ports");
  await person.tapText("square ports");
  assert.match(await title(), /One chamber is left/);
  await check("settled");
  assert.doesNotMatch(await page.locator("#top").textContent(), /the answer is/);
  await person.tapText("Answer: clamp 30 long");
  assert.strictEqual((await person.question()).place, "1L adjuster");
  const end = JSON.parse(await person.record()).wheel_ends[0];
  assert.deepStrictEqual(
    [end.chamber, end.remark],
    ["clamp 30 long", "clues: clamp band; diameter 8 1/8; square ports"],
  );
  await person.tapText("Back");
  await person.tapText("Not legible");
  await person.tapText("clamp band");
  await title();
  await person.tapText("20");
  await title();
  await chooseDiameter(page, person);
  await person.read("8 1/8");
  assert.match(await page.locator("#top .warning").textContent(), /contradict each other/);
  assert.strictEqual(await page.locator("#panel .primary").count(), 0);
  await check("contradiction");
  while (!/Not settled/.test(await title())) await person.tapText("Cannot tell");
  await person.tapText("Start over");
  assert.match(await title(), /holds the two halves/);
  await person.tapText("Back");
  assert.strictEqual((await person.question()).place, "1L chamber");
  await checkPerson(person);
  await browser.close();
});

test("Back takes back a first tap, a choice, the last clue, then the clues", async () => {
  const { browser, page, person } = await open(ADDRESS);
  const seen = () => page.evaluate(() => app.reply.question.seen.map((one) => `${one.clue} ${one.value}`)),
    back = async () => {
      await person.tapText("Back");
      return clueTitle(page);
    };
  await person.begin("us-fmcsr");
  await walkTo(person, "1L chamber");
  await person.tapText("Not legible");
  await person.tapText("clamp band");
  await clueTitle(page);
  await person.tapText("Cannot tell");
  await clueTitle(page);
  await chooseDiameter(page, person);
  await page.locator('.keys .mark[aria-label^="8 "]').tap();
  assert.match(await back(), DIAMETER);
  assert.strictEqual(await page.locator('.keys .mark[aria-label^="8 "]').count(), 1);
  assert.doesNotMatch(await back(), DIAMETER);
  assert.deepStrictEqual(await seen(), ["family clamp", "stamp ?"]);
  assert.match(await back(), /stamp/);
  assert.deepStrictEqual(await seen(), ["family clamp"]);
  assert.match(await back(), /holds the two halves/);
  assert.deepStrictEqual(await seen(), []);
  await person.tapText("Back");
  assert.strictEqual((await person.question()).place, "1L chamber");
  await person.tapText("Back");
  assert.notStrictEqual((await person.question()).place, "1L chamber");
  await checkPerson(person);
  await browser.close();
});

/* The break asks again for the chocks and the like; then the clues are there, and none of them is asked for again. */
async function backAtClues(page, person, screen = "clue") {
  const due = async (question) => question.place !== "1L chamber";
  await person.walk(plans.truck, due);
  await page.waitForFunction((name) => document.body.dataset.screen === name, screen);
}

const OBSERVED = [
  ["family clamp", (person) => person.tapText("clamp band")],
  ["stamp ?", (person) => person.tapText("Cannot tell")],
  ["diameter 8 1/8", async (person, page) => {
    await chooseDiameter(page, person);
    await person.read("8 1/8");
  }],
  ["port-shape ?", (person) => person.tapText("Cannot tell")],
];

test("a page that is loaded again at any clue has every one of them", async () => {
  const { browser, page, person } = await open(ADDRESS);
  const seen = [];
  await person.begin("us-fmcsr");
  await walkTo(person, "1L chamber");
  await person.tapText("Not legible");
  for (const [one, press] of OBSERVED) {
    await press(person, page);
    seen.push(one);
    const title = await clueTitle(page),
      kept = await person.record(),
      said = await page.locator("#top .say").allTextContents();
    await page.reload();
    await takeUp(page, person, kept);
    await backAtClues(page, person);
    assert.strictEqual(await clueTitle(page), title);
    assert.deepStrictEqual(await page.locator("#top .say").allTextContents(), said);
    assert.deepStrictEqual(
      await page.evaluate(() => app.reply.question.seen.map((clue) => `${clue.clue} ${clue.value}`)),
      seen,
    );
  }
  await person.tapText("Answer: clamp 30");
  assert.strictEqual((await person.question()).place, "1L stroke_class");
  await checkPerson(person);
  await browser.close();
});

test("a browser that is killed among the clues has all that were answered", async () => {
  const profile = path.join(folder, "clues"),
    seen = [];
  let kept = null;
  for (const [one, press] of OBSERVED) {
    const { context, page, person } = await openKept(ADDRESS, profile);
    const pid = Number(fs.readlinkSync(path.join(profile, "SingletonLock")).split("-").pop());
    if (kept === null) {
      await person.begin("us-fmcsr");
      await walkTo(person, "1L chamber");
      await person.tapText("Not legible");
    } else {
      await page.waitForFunction((text) => keptRecords().some((entry) => entry.record === text), kept);
      await takeUp(page, person, kept);
      await backAtClues(page, person);
    }
    await press(person, page);
    seen.push(one);
    await clueTitle(page);
    kept = await person.record();
    process.kill(pid, "SIGKILL");
    await context.close().catch(() => null);
    fs.rmSync(path.join(profile, "SingletonLock"), { force: true });
    assert.deepStrictEqual(
      JSON.parse(kept).steps.find((step) => step.step === "1L clues").answer.split("; "),
      seen,
    );
  }
});

test("Back undoes the first tap of a reading, then the answer before", async () => {
  const { browser, page, person } = await open(ADDRESS);
  await person.begin("us-fmcsr");
  await walkTo(person, "2L released");
  await page.locator('.keys .mark[aria-label^="7 "]').tap();
  await person.tapText("Back");
  assert.strictEqual(await page.locator('.keys .mark[aria-label^="7 "]').count(), 1);
  assert.strictEqual((await person.question()).place, "2L released");
  await person.read("2 3/16");
  assert.match(await page.locator("#top .noted").textContent(), /2 3\/16 in/);
  await person.tapText("Back");
  assert.strictEqual((await person.question()).place, "2L released");
  await person.read("2 1/8");
  assert.strictEqual(
    JSON.parse(await person.record()).wheel_ends.find((end) => end.position === "2L").released,
    "2 1/8",
  );
  await browser.close();
});

test("a reading in millimetres, by the keyboard, and one that is refused", async () => {
  const { browser, page, person } = await open(ADDRESS);
  await person.begin("us-fmcsr");
  await walkTo(person, "1L released");
  await person.tapText("More");
  await checkScreen(page, "more");
  await checkAccess(page, "more");
  await person.tapText("Type it");
  await page.locator("#field").fill("two inches");
  await page.keyboard.press("Enter");
  await person.question();
  assert.match(await page.locator("#top .refused").textContent(), /./);
  assert.strictEqual((await person.question()).place, "1L released");
  await person.tapText("More");
  await person.tapText("Tape in millimetres");
  await page.locator('.key[aria-label="5 cm"]').tap();
  await page.locator('.key[aria-label="54 mm"]').tap();
  await person.question();
  assert.match(await page.locator("#top .noted").textContent(), /54/);
  assert.strictEqual(
    JSON.parse(await person.record()).wheel_ends.find((end) => end.position === "1L").released,
    "54 mm",
  );
  await browser.close();
});

test("a wheel end is chosen on the drawing, and gone back to", async () => {
  const { browser, page, person } = await open(ADDRESS);
  await person.begin("us-fmcsr");
  await walkTo(person, "1R released");
  await person.tapText("Vehicle");
  await checkScreen(page, "map");
  await checkAccess(page, "map");
  await page.locator('.end-key[aria-label^="2L"]').tap();
  assert.match(await page.locator("#top").textContent(), /2 1\/8/);
  await checkScreen(page, "wheel end");
  await checkAccess(page, "wheel end");
  await page.getByRole("button", { name: "Change the last answer of 2L" }).tap();
  assert.strictEqual((await person.question()).place, "2L released");
  await browser.close();
});

test("a file that is no record is refused, a record from elsewhere is taken up", async () => {
  const { browser, page, person } = await open(ADDRESS);
  const give = async (text) => {
    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      person.tapText("Open a record file"),
    ]);
    await chooser.setFiles({ name: "record.json", mimeType: "application/json", buffer: Buffer.from(text) });
  };
  for (const text of [
    "",
    "[]",
    "no JSON",
    '{"record": "something-else"}',
    '{"record": "brake-stroke-inspection", "version": 99}',
  ]) {
    await give(text);
    await page.waitForFunction(() => document.body.dataset.screen === "failed");
    await person.tapText("Close");
  }
  assert.deepStrictEqual(await page.evaluate(() => keptRecords().length), 0);
  const record = JSON.parse(
    fs.readFileSync(path.join(__dirname, "../../examples/data/inspection.json"), "utf8"),
  );
  record.unit = '<img src=x onerror="document.title=1">';
  await give(JSON.stringify(record));
  await page.waitForFunction(() => document.body.dataset.screen === "entry");
  assert.match(await page.locator("h1").textContent(), /<img src=x/);
  await checkPerson(person);
  await browser.close();
});

/* The vehicle, its chambers and what was defective come from the record; no reading does. */
test("a vehicle as last time, from a record of another phone", async () => {
  const { browser, page, person } = await open(ADDRESS);
  const last = fs.readFileSync(path.join(__dirname, "../../examples/data/inspection.json"), "utf8");
  await page.evaluate((text) => importText(text), last);
  await page.waitForFunction(() => document.body.dataset.screen === "entry");
  await person.tapText("New inspection of this vehicle");
  await walkTo(person, "kept", { ...plans.truck, psi: 95 });
  assert.match(await page.locator("#top").textContent(), /From the record of 2026-11-20:1L 1R: 20 standard/);
  await checkScreen(page, "kept");
  await checkAccess(page, "kept");
  await person.tapText("2L");
  await person.tapText("Done");
  const before = JSON.parse(last).wheel_ends,
    now = JSON.parse(await person.record()).wheel_ends;
  assert.deepStrictEqual(
    now.map((end) => [end.position, end.chamber, end.released, end.applied]),
    before.map((end) => [end.position, end.position === "2L" ? undefined : end.chamber, undefined, undefined]),
  );
  assert.strictEqual((await person.question()).place, "1L released");
  assert.strictEqual(await page.evaluate(() => keptRecords().length), 2);
  await checkPerson(person);
  await browser.close();
});

/* A server that can be shut; localhost counts as secure. */
function serve(files) {
  const server = http.createServer((asked, answer) => {
    const file = files[asked.url.slice(1)];
    if (!file) return answer.writeHead(404).end();
    const type = asked.url.endsWith(".js") ? "text/javascript" : "text/html; charset=utf-8";
    answer.writeHead(200, { "content-type": type });
    return answer.end(fs.readFileSync(file));
  });
  return new Promise((ready) => server.listen(0, "127.0.0.1", () => ready(server)));
}

test("from a server, the second visit needs none", async () => {
  const at = (name) => path.join(folder, name);
  const made = spawnSync(COMMAND, ["page", "--html", at("p.html"), "--service-worker", at("w.js")]);
  assert.strictEqual(made.status, 0, String(made.stderr));
  const server = await serve({ "p.html": at("p.html"), "w.js": at("w.js") });
  const { browser, context, page, person } = await open("about:blank");
  await context.setOffline(false);
  const address = `http://localhost:${server.address().port}/`;
  await page.goto(address + "p.html");
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => null));
  await page.waitForFunction(() => navigator.serviceWorker.controller);
  server.closeAllConnections();
  await new Promise((shut) => server.close(shut));
  await page.goto(address + "p.html");
  await person.begin("us-fmcsr");
  await walkTo(person, "1L chamber");
  const kept = await person.record();
  await page.reload();
  await takeUp(page, person, kept);
  await assert.rejects(page.goto(address + "other.html")); // nothing but the page is kept
  assert.deepStrictEqual(
    [...new Set(person.requests.map((one) => one.replace(address, "")))].filter((one) => !/^about:/.test(one)).sort(),
    ["other.html", "p.html"],
  );
  await browser.close();
});

/* --- The clock ----------------------------------------------------------------------------------------- */

test("a clock runs on while the page is gone, and gives the seconds of its start", async () => {
  const { browser, page, person } = await open(ADDRESS);
  await person.begin("us-fmcsr", "us-cdl");
  await walkTo(person, "loss-applied seconds", plans.combination);
  await person.tapText("Clock").catch(() => null);
  await person.tapText("Start");
  await checkScreen(page, "clock");
  await page.evaluate(() => {
    const place = Object.keys(localStorage).find((one) => one.startsWith("rodtravel/clock/"));
    localStorage.setItem(place, JSON.stringify({ start: Date.now() - 40000 }));
  });
  const kept = await person.record();
  await page.reload();
  await takeUp(page, person, kept);
  await walkTo(person, "loss-applied seconds", plans.combination);
  await page.waitForFunction(() => /^0:(1[0-9]|20)$/.test(document.querySelector(".clock").textContent));
  await page.evaluate(() => {
    const place = Object.keys(localStorage).find((one) => one.startsWith("rodtravel/clock/"));
    localStorage.setItem(place, JSON.stringify({ start: Date.now() - 61000 }));
  });
  await page.waitForFunction(() => document.querySelector(".clock").textContent.startsWith("+"));
  await checkAccess(page, "time is up");
  await person.tapText("Use 60 s");
  await person.question();
  assert.match(await page.locator("#top .noted").textContent(), /60 seconds/);
  assert.strictEqual(
    await page.evaluate(() => Object.keys(localStorage).filter((one) => one.includes("clock")).length),
    0,
  );
  await browser.close();
});

/* --- Other sizes, hands, lights and languages ---------------------------------------------------------- */

const LOOKS = [
  ["magnified to 200 %", { viewport: { width: 180, height: 320 } }, null],
  ["in the dark", { colorScheme: "dark", viewport: { width: 390, height: 844 } }, null],
  ["in the sun, with the left hand", {}, { sun: true, leftHand: true }],
  ["in French", { locale: "fr" }, null],
  ["in Spanish, words to say aloud", { locale: "es", viewport: { width: 412, height: 915 } }, { speak: true }],
  ["on a desk", { viewport: { width: 1280, height: 800 }, isMobile: false }, null],
];

/* There and back: what was seen is taken back, and the question is open as before. */
async function lookAtClues(page, look) {
  await page.evaluate(() => beginClues());
  for (const [clue, value] of [["family", "clamp"], ["stamp", "?"], ["diameter", "8 1/8"], ["port-shape", "square"]]) {
    await look("clue " + clue);
    await page.evaluate((one) => saw(...one), [clue, value]);
    await clueTitle(page);
  }
  await look("settled");
  await page.evaluate(() => chooseClue());
  await look("list of clues");
  await page.evaluate(() => startAgain());
  await clueTitle(page);
  await page.evaluate(() => leaveClue());
}

for (const [name, more, set] of LOOKS) {
  test(`every screen ${name}`, async () => {
    const { browser, page, person } = await open("about:blank", more);
    if (set)
      await page.addInitScript((text) => localStorage.setItem("rodtravel/settings", text), JSON.stringify(set));
    await page.goto(ADDRESS);
    const seen = new Set();
    const look = async (screen) => {
      await checkScreen(page, screen);
      if (!seen.has(screen)) await checkAccess(page, screen);
      seen.add(screen);
    };
    await look("home");
    for (const screen of ["chooseRules", "showLearning", "chooseLevel", "importFailure", "showSettings"]) {
      await page.evaluate(
        (one) => (one === "importFailure" ? showFailure("?") : window[one](showHome)),
        screen,
      );
      await look(screen);
    }
    await page.evaluate(() => beginLesson(3, "mixed"));
    for (const line of ["1 9/16", "1 3/4", "in", "1"]) {
      await look("lesson " + line);
      await page.evaluate((text) => takeLesson(text), line);
    }
    await look("marks");
    await page.evaluate(() => beginBy("us-fmcsr", "us-cdl"));
    for (let question; (question = await person.question());) {
      await look(question.kind + question.asked + Boolean(question.default));
      if (question.place === "1L chamber") await lookAtClues(page, look);
      const given = {
        words: question.words[0]?.word,
        length: "2 1/8",
        pressure: "95",
        axles: "2",
        chamber: "20",
        seconds: "60",
        count: "1",
      };
      const line =
        question.asked !== "question"
          ? question.keep
          : question.place.endsWith("applied")
            ? "3 7/8"
            : given[question.kind];
      await page.evaluate(
        (text) => answer(text),
        question.default && question.asked === "question" ? "" : line,
      );
    }
    for (const screen of ["showEnd", "showMap"]) {
      await page.evaluate((one) => window[one](), screen);
      await look(screen);
    }
    await page.evaluate(() => showReport(app.entry, showEnd));
    await look("report");
    await page.evaluate(() => showEntry(app.entry));
    await look("entry");
    await checkPerson(person);
    await browser.close();
  });
}

test("by the keyboard alone, and each question has the focus", async () => {
  const { browser, page, person } = await open(ADDRESS, { hasTouch: false, isMobile: false });
  await page.evaluate(() => beginBy("us-fmcsr", null));
  await person.question();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  assert.strictEqual((await person.question()).place, "unit");
  assert.strictEqual(
    await page.evaluate(() => document.activeElement.textContent),
    (await person.question()).title,
  );
  await page.keyboard.press("Tab");
  await page.keyboard.type("T-7");
  await page.keyboard.press("Enter");
  assert.strictEqual((await person.question()).place, "carrier");
  assert.strictEqual(JSON.parse(await person.record()).unit, "T-7");
  await browser.close();
});

/* Seed 3 begins with 1L at 2 1/8 and 3 11/16 on a TYPE 16, whose limit is 1 3/4; no brake of it is defective. */
test("a lesson: figures by the tape's keys or typed, marked by the command", async () => {
  const { browser, page, person } = await open(ADDRESS);
  const ask = () => page.locator("#panel h1").textContent(),
    top = () => page.locator("#top").textContent();
  await person.tapText("Practice and cards");
  await person.tapText("Practice: read the tape");
  await checkScreen(page, "level");
  await checkAccess(page, "level");
  await page.evaluate(() => beginLesson(3, "mixed"));
  await checkScreen(page, "lesson");
  await checkAccess(page, "lesson");
  await person.read("1 9/16");
  assert.strictEqual(await ask(), "1L: limit");
  await person.tapText("Type it");
  for (const [text, says] of [["two", /a number was expected/], ["1 3/0", /./], ["99 99", /./]]) {
    await page.locator("#field").fill(text);
    await page.keyboard.press("Enter");
    assert.match(await page.locator("#top .refused").textContent(), says);
    assert.strictEqual(await ask(), "1L: limit", text);
  }
  await checkScreen(page, "typed");
  await checkAccess(page, "typed");
  await page.locator("#field").fill("1.75");
  await page.keyboard.press("Enter");
  await person.tapText("in adjustment");
  await checkScreen(page, "reasons");
  await checkAccess(page, "reasons");
  await person.tapText("1 within-limit");
  assert.match(await top(), /4 of 4/);
  assert.strictEqual(await page.locator("#top .verdict.good").count(), 4);
  await checkAccess(page, "marks");
  await person.tapText("Next");
  await person.tapText("Keys");
  await person.tapText("None");
  await person.read("2");
  await person.tapText("inoperative");
  await person.tapText("Skip");
  assert.match(await top(), /took the limit of the other stroke class.*not answered: within-limit.*4 of 8/);
  assert.strictEqual(await page.locator("#top .verdict.bad").count(), 4);
  await checkScreen(page, "faults");
  await page.evaluate(() => {
    lesson.at = lesson.sheet.wheel_ends.length - 1;
  });
  await person.tapText("Next");
  await checkScreen(page, "count");
  await checkAccess(page, "count");
  await person.tapText("0");
  await person.tapText("Enter");
  await person.tapText("out of service");
  assert.match(await top(), /0 of 10 brakes defective.*5 of 10/);
  await person.tapText("Another one");
  assert.match(await ask(), /^1L: stroke$/);
  await person.tapText("Close");
  await person.tapText("Cards to say aloud");
  assert.match(await page.locator("iframe").getAttribute("srcdoc"), /^<!DOCTYPE html>/);
  await checkPerson(person);
  await browser.close();
});

/* The reasons are a list of the command's, in each language; every one of them can be answered. */
test("a lesson in each language", async () => {
  const { browser, page, person } = await open(ADDRESS);
  for (const at of [0, 1, 2]) {
    await page.evaluate((one) => chooseLanguage(one, showHome), at);
    await page.evaluate(() => beginLesson(7, "hard"));
    await person.read("1 9/16");
    await person.read("2");
    await page.locator("#panel .key.signed").nth(1).tap();
    assert.strictEqual(await page.locator("#panel .key.signed").count(), 11);
    await checkScreen(page, "reasons");
    await page.locator("#panel .key.signed").nth(10).tap();
    assert.strictEqual(await page.evaluate(() => document.body.dataset.screen), "marks");
    assert.strictEqual(await page.locator("#top .verdict").count(), 4);
    await checkScreen(page, "marks");
  }
  await checkPerson(person);
  await browser.close();
});

test("the checks in the cab are asked story by story, and marked with the reason", async () => {
  const { browser, page, person } = await open(ADDRESS);
  const given = await page.evaluate(() => {
    beginExam(3);
    return exam.stories.map((story) => story.questions.map((one) => [one.prompt, one.right, one.choices]));
  });
  assert.ok(given.length >= 4, `${given.length} stories`);
  await checkScreen(page, "story");
  await checkAccess(page, "story");
  for (const [at, questions] of given.slice(0, 3).entries()) {
    for (const [prompt, right, choices] of questions) {
      assert.strictEqual(await page.locator("#panel h1").textContent(), prompt);
      const chosen = choices.find((one) => (one.word === right) === (at !== 1));
      await person.tapText(at === 2 && prompt === questions[0][0] ? "Skip" : chosen.says);
    }
    await checkScreen(page, "story marks");
    const left = at === 2 ? 1 : 0;
    assert.strictEqual(await page.locator(`.verdict.${at === 1 ? "bad" : "good"}`).count(), questions.length - left);
    if (at === 1) await checkAccess(page, "story marks");
    await person.tapText("Next");
  }
  await person.tapText("Close");
  for (const [name, heading] of [
    ["On paper: checks in the cab", /Checks in the cab, practice/],
    ["On paper: the tape", /<svg/],
  ]) {
    await person.tapText(name);
    assert.match(await page.locator("iframe").getAttribute("srcdoc"), heading);
    await checkScreen(page, name);
    const sheet = await page.locator("iframe").getAttribute("srcdoc");
    await person.tapText("Answers");
    assert.notStrictEqual(await page.locator("iframe").getAttribute("srcdoc"), sheet);
    await person.tapText("Close");
  }
  await checkPerson(person);
  await browser.close();
});

test("what measures the keys can fail", async () => {
  const { browser, page } = await open("about:blank");
  await page.setContent(
    '<main id="top"><button style="width:60px;height:80px">a</button></main><div id="panel"></div>',
  );
  const found = await page.evaluate(measure, [KEY, GAP, page.viewportSize().width]);
  assert.match(found.join(), /^a: 60 x 80/);
  await browser.close();
});

/* Two at a time. */
async function work(queue) {
  for (let next; (next = queue.shift());) {
    try {
      await next.test.run();
      console.log(`ok ${next.number} - ${next.test.name}`);
    } catch (error) {
      console.log(`not ok ${next.number} - ${next.test.name}\n${String(error.stack).replace(/^/gm, "# ")}`);
      process.exitCode = 1;
    }
  }
}

const only = process.argv[4];
const queue = tests
  .map((one, i) => ({ test: one, number: i + 1 }))
  .filter(({ test: one }) => !only || one.name.includes(only));
console.log(`1..${queue.length}`);
Promise.all([work(queue), work(queue)]).finally(() => {
  fs.rmSync(folder, { recursive: true, force: true });
  process.exit(); // a browser that a failed test left open would go on
});
