// SPDX-License-Identifier: Apache-2.0
// A person with a phone: opens the page in a browser, and answers by taps, which are counted.
"use strict";

const { chromium } = require("playwright-core");

const PHONE = { viewport: { width: 360, height: 640 }, hasTouch: true, isMobile: true, acceptDownloads: true };
const PATIENCE = 8000;
const BROWSER = {
  executablePath: "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic"],
};

class Person {
  constructor(page) {
    this.page = page;
    this.taps = 0;
    this.readingTaps = 0;
    this.errors = [];
    this.requests = [];
    page.on("pageerror", (error) => this.errors.push(error.message));
    page.on("console", (line) => line.type() === "error" && this.errors.push(line.text()));
    page.on("request", (request) => this.requests.push(request.url()));
  }

  /* What the page asks now; null = it does not ask. */
  async question() {
    await this.page.waitForFunction(() => !app.busy);
    return this.page.evaluate(() =>
      document.body.dataset.screen === "question" && app.reply && app.reply.question
        ? app.reply.question
        : null,
    );
  }

  record() {
    return this.page.evaluate(() => app.entry.record);
  }

  async tap(selector) {
    this.taps++;
    await this.page.locator(selector).first().tap();
  }

  async tapText(text) {
    this.taps++;
    await this.page.getByRole("button", { name: text, exact: true }).first().tap();
  }

  /* "2 1/8": whole inches, then the mark. */
  async read(text) {
    const whole = text.includes("/") && !text.includes(" ") ? "0" : text.split(" ")[0];
    await this.page.locator(`.keys .mark[aria-label^="${whole} "]`).first().tap();
    await this.page.locator(`.keys .mark[aria-label="${text}"]`).tap();
    this.readingTaps += 2;
    await this.question();
  }

  /* 95: tens, then the rest. */
  async gauge(psi) {
    const tens = Math.floor(psi / 10) * 10,
      key = `.keys .key[aria-label="${tens} psi"]`;
    if ((await this.page.locator(key).count()) === 0) await this.tapText("Other pressure");
    await this.tap(key);
    await this.tap(`.keys .key[aria-label="${psi} psi"]`);
  }

  async digits(text) {
    for (const sign of text) await this.tapText(sign);
    await this.tapText("Enter");
  }

  /* By the person's plan: what it says for this place, else what the page offers, else yes. */
  async answer(question, plan) {
    const wanted =
      plan[question.place] ?? plan[question.check ? `${question.check} ${question.id}` : question.id];
    if (question.asked !== "question") return this.tap(".odd");
    if (wanted === undefined && question.default) return this.tap(".enter");
    if (wanted === undefined && question.kind !== "words") return this.skip();
    if (question.kind === "length") return this.read(wanted);
    if (question.kind === "pressure") return wanted === "never" ? this.tapText("never") : this.gauge(wanted);
    if (question.kind === "axles" && plan.vehicle === "combination") return this.units(wanted);
    if (question.kind === "seconds" || question.kind === "number") return this.seconds(wanted);
    return this.tapText(wanted ?? "yes");
  }

  async skip() {
    await this.tapText("More");
    await this.tapText("Skip");
  }

  async units(list) {
    for (const axles of list) await this.tapText(axles);
    await this.tapText("Done");
  }

  async seconds(text) {
    await this.tapText("More");
    await this.tapText("Type it (123)");
    await this.digits(text);
  }

  /* From the first screen to the first question. */
  async begin(rules, airRules) {
    await this.tapText("New inspection");
    await this.tap(`.key.row:has-text("${rules}")`);
    await this.tap(airRules ? `.key.row:has-text("${airRules}")` : "#panel .primary");
  }

  /* To the end, or as long as `watch` wants. */
  async walk(plan, watch = async () => true) {
    for (let question; (question = await this.question());) {
      if (!(await watch(question))) return;
      const now = await this.question(); // the page may have been loaded again
      if (now) await this.answer(now, plan);
    }
  }
}

async function open(address, more = {}) {
  const browser = await chromium.launch(BROWSER);
  const context = await browser.newContext({ ...PHONE, locale: "en", ...more });
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  await context.setOffline(true);
  const person = new Person(page);
  await page.goto(address);
  return { browser, context, page, person };
}

/* A browser that keeps what it has in a folder, as a phone does. */
async function openKept(address, folder) {
  const context = await chromium.launchPersistentContext(folder, { ...BROWSER, ...PHONE, locale: "en" });
  const page = context.pages()[0] || (await context.newPage());
  page.setDefaultTimeout(PATIENCE);
  const person = new Person(page);
  await page.goto(address);
  return { context, page, person };
}

module.exports = { PATIENCE, open, openKept, Person };
