// The bench as its user meets it: opens the page in Chromium, watches for trouble, and knows where
// things are. Tests speak through this class; only this file names selectors.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { chromium } from "playwright-core";

/** The published page, and the same page below a longer path. */
export const PAGE_URL = required("RECALESCE_URL");
export const PAGE_URL_BELOW = required("RECALESCE_URL_BELOW");

/** Window sizes that the page is drawn for, in CSS pixels. */
export const WIDE = { width: 1440, height: 900 };
export const PHONE = { width: 390, height: 844 };

function required(name) {
  const value = process.env[name];
  if (!value) throw new Error(`${name} is not set: run the page tests with \`cargo xtask test page\``);
  return value;
}

/** Starts Chromium; the caller closes it. */
export function launch() {
  return chromium.launch({
    executablePath: required("CHROMIUM"),
    args: ["--disable-background-networking", "--disable-component-update", "--disable-gpu", "--no-first-run"],
  });
}

export class BenchPage {
  /** What went wrong so far: console errors, exceptions, refused content, requests to other hosts. */
  troubles = [];

  constructor(page, url) {
    this.page = page;
    this.url = url;
  }

  /**
   * Opens the page in a browser context of its own. `options` go to the context (`viewport`,
   * `colorScheme`, `javaScriptEnabled` ..); `before` may prepare the page before it loads.
   */
  static async open(browser, { url = PAGE_URL, before = async () => {}, ...options } = {}) {
    const context = await browser.newContext({ viewport: WIDE, ...options });
    const bench = new BenchPage(await context.newPage(), url);
    await bench.watch();
    await before(bench.page);
    await bench.page.goto(url, { waitUntil: "load" });
    return bench;
  }

  async watch() {
    const { page, troubles } = this;
    page.on("pageerror", (error) => troubles.push(`exception: ${error.message}`));
    page.on("console", (message) => {
      if (message.type() === "error") troubles.push(`console: ${message.text()}`);
    });
    const own = new URL(this.url).host;
    page.on("request", (request) => {
      const { protocol, host } = new URL(request.url());
      if (/^(https?|wss?):$/.test(protocol) && host !== own) troubles.push(`request to ${request.url()}`);
    });
    page.on("requestfailed", (request) => {
      const reason = request.failure()?.errorText;
      // Aborted: the page was left while it loaded.
      if (reason !== "net::ERR_ABORTED") troubles.push(`failed: ${request.url()} ${reason}`);
    });
    page.on("response", (response) => {
      if (response.status() >= 400) troubles.push(`${response.status()}: ${response.url()}`);
    });
    await page.exposeFunction("reportViolation", (what) => troubles.push(`refused by the policy: ${what}`));
    await page.addInitScript(() =>
      addEventListener("securitypolicyviolation", (event) =>
        window.reportViolation(`${event.violatedDirective} ${event.blockedURI}`),
      ),
    );
  }

  /** Waits until the program runs. */
  async started() {
    await this.page.waitForSelector("html[data-started]", { state: "attached", timeout: 30_000 });
    return this;
  }

  assertNoTrouble() {
    assert.deepEqual(this.troubles, []);
  }

  /** The note that stands for a program that cannot start or has stopped. */
  get note() {
    return this.page.locator(".boot-note");
  }

  /** What is shown until the program runs. */
  get waiting() {
    return this.page.locator("#boot");
  }

  /** The handle of one degree of freedom, such as `soak`. */
  handle(name) {
    return this.page.locator(`[data-handle="${name}"]`);
  }

  button(name) {
    return this.page.getByRole("button", { name });
  }

  /** Theme in force: `light` or `dark`. */
  theme() {
    return this.page.evaluate(() => document.documentElement.dataset.theme);
  }

  /** Faults against the accessibility rules of WCAG 2.2 A and AA, one line each. */
  async accessibilityFaults() {
    const source = await readFile(new URL("node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
    await this.page.evaluate(source);
    const { violations } = await this.page.evaluate(() =>
      window.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }),
    );
    return violations.flatMap(({ id, help, nodes }) => nodes.map(({ target }) => `${id}: ${help}: ${target}`));
  }

  close() {
    return this.page.context().close();
  }
}
