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

/** Where the browser keeps things for the page. */
export const KEYS = {
  bench: "recalesce.bench",
  shelf: "recalesce.shelf",
  preferences: "recalesce.preferences",
  shop: "recalesce.shop",
  typed: "recalesce.typed",
};
/** Where text is set aside that cannot be read. */
export const asideOf = (key) => `${key}.set-aside`;

/** How long the page may take for one answer, ms: a slow machine, an unoptimised build. */
const PATIENCE_MS = 20_000;

/** Starts Chromium; the caller closes it. */
export function launch() {
  return chromium.launch({
    executablePath: required("CHROMIUM"),
    // Left off by default: as root, in a container, Chromium has no sandbox to start.
    chromiumSandbox: false,
    args: [
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-gpu",
      // Letters as wide as on paper, whatever the browser.
      "--font-render-hinting=none",
      "--no-first-run",
    ],
  });
}

/** The route that the page opens with, as it is saved. */
export async function exampleOf(browser) {
  const bench = await BenchPage.ready(browser);
  await bench.press("soak", "ArrowUp", "ArrowDown");
  // Not the one between the two keys.
  const route = await bench.savedRoute(({ soak }) => soak.temperature_c === 830);
  await bench.close();
  return route;
}

/** A bench file with a route, as the browser keeps it. */
export const benchOf = (route) =>
  JSON.stringify({ format: "recalesce", version: 5, kind: "bench", routes: [{ id: 1, name: "kept", route }] });

/** A text without no-break spaces, so that it can be written down in a test. */
export const plain = (text) => text.replaceAll("\u00a0", " ").replaceAll("\u202f", " ").trim();

export class BenchPage {
  /** What went wrong so far: console errors, exceptions, refused content, requests to other hosts. */
  troubles = [];

  constructor(page, url) {
    this.page = page;
    this.url = url;
    page.setDefaultTimeout(PATIENCE_MS);
  }

  /**
   * Opens the page in a browser context of its own. `options` go to the context (`viewport`,
   * `colorScheme`, `javaScriptEnabled` ..); `kept` is what the browser has kept from before, by
   * key; `before` may prepare the page before it loads, `until` says how far to wait for it.
   */
  static async open(browser, { url = PAGE_URL, kept = {}, before = async () => {}, until = "load", ...options } = {}) {
    const localStorage = Object.entries(kept).map(([name, value]) => ({ name, value }));
    const storageState = { cookies: [], origins: [{ origin: new URL(url).origin, localStorage }] };
    // What a test holds back or counts is not to come from a copy that the page keeps.
    const context = await browser.newContext({ viewport: WIDE, storageState, serviceWorkers: "block", ...options });
    const bench = new BenchPage(await context.newPage(), url);
    await bench.watch();
    await before(bench.page);
    await bench.page.goto(url, { waitUntil: until });
    return bench;
  }

  /** Opens the page and waits until it shows the outcome of its route and the phase map of its steel. */
  static async ready(browser, options) {
    const bench = await (await BenchPage.open(browser, options)).started();
    await bench.sentenceList.first().waitFor({ state: "attached" });
    await bench.mapArrives();
    return bench;
  }

  /** Another tab of the same browser, with the same page. */
  async tab(before = async () => {}) {
    const other = new BenchPage(await this.page.context().newPage(), this.url);
    await other.watch();
    await before(other.page);
    await other.page.goto(this.url);
    await other.started();
    await other.tableOfQuenches.waitFor({ state: "attached" });
    return other;
  }

  /** Waits until the phase map is that of the steel. */
  async mapArrives() {
    await this.page.locator(".map[aria-busy=false]").waitFor({ state: "attached" });
  }

  /** Whether it is still being computed. */
  async isMapComing() {
    return (await this.page.locator(".map").getAttribute("aria-busy")) === "true";
  }

  async watch() {
    const { page, troubles } = this;
    // No printer here: a dialog that nobody answers keeps the browser from making a PDF. Counted instead.
    await page.addInitScript(() => {
      window.printed = 0;
      window.print = () => {
        window.printed += 1;
      };
    });
    page.on("pageerror", (error) => troubles.push(`exception: ${error.message}`));
    page.on("console", (message) => {
      // Aborted: the page was left while it loaded.
      const isLeft = /WebAssembly compilation aborted: .*loading was aborted/.test(message.text());
      if (message.type() === "error" && !isLeft) troubles.push(`console: ${message.text()}`);
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

  /** Loads the page again, as its user would. */
  async reload() {
    const before = this.troubles.length;
    await this.page.reload();
    // Parts that were on their way are cut off, and the page that is left says so.
    const since = this.troubles.splice(before);
    this.troubles.push(...since.filter((what) => !what.startsWith("console: TypeError: Failed to fetch")));
    await this.started();
    await this.sentenceList.first().waitFor({ state: "attached" });
  }

  /** Waits until what `read` gives in this process fits; fails with the last value read. */
  async until(read, fits, what) {
    const end = performance.now() + PATIENCE_MS;
    for (;;) {
      const value = await read();
      if (fits(value)) return value;
      const exception = this.troubles.find((trouble) => trouble.startsWith("exception"));
      if (exception) assert.fail(`${what}: the program has stopped. ${this.troubles.join(" ").slice(0, 400)}`);
      if (performance.now() > end) assert.fail(`${what}: still ${JSON.stringify(value)}`);
      // One frame of the page, no fixed time.
      await this.page.evaluate(() => new Promise((drawn) => requestAnimationFrame(drawn)));
    }
  }

  /** Waits until `read` gives `expected`. */
  shows(read, expected, what = "the page shows") {
    return this.until(read, (value) => value === expected, `${what}, ${JSON.stringify(expected)} wanted`);
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

  button(name) {
    return this.page.getByRole("button", { name });
  }

  /** The button of a message that takes back what it tells. */
  get undoOfMessage() {
    return this.page.locator(".message").getByRole("button", { name: "Undo" });
  }

  // -- The outcome

  get outcome() {
    return this.page.locator(".out");
  }

  get sentenceList() {
    return this.page.locator(".out .sentences .say");
  }

  /** The sentences of the outcome as plain text. */
  async sentences() {
    return (await this.sentenceList.allTextContents()).map(plain);
  }

  /** What is wrong with the route; none while it has an outcome. */
  get refusal() {
    return this.page.locator(".out [role=alert] .say");
  }

  /** Opacity of each part that shows an earlier outcome. */
  staleOpacities() {
    return this.page.locator(".out .stale, .route.stale canvas, .stage.stale .notes, .stage.stale table").evaluateAll((all) => all.map((part) => getComputedStyle(part).opacity));
  }

  /** The first number of a sentence: a key to what stands behind it. */
  numberOf(sentence) {
    return this.sentenceList.nth(sentence).locator("button.number").first();
  }

  /** All numbers of the sentences. */
  get numbers() {
    return this.page.locator(".out .sentences button.number");
  }

  /** The dialog of an opened number. */
  get opened() {
    return this.page.locator("dialog.opened");
  }

  get openedEquation() {
    return this.opened.locator(".equation");
  }

  get openedFigure() {
    return this.opened.locator(".figure");
  }

  // -- Handles

  /** The handle of one degree of freedom: `soak`, `soak-time`, `quench` or `temper`. */
  handle(name) {
    return this.page.locator(`[data-handle="${name}"]`);
  }

  get handles() {
    return this.page.locator("[data-handle]");
  }

  /** The value of a handle, as a number. */
  async valueOf(name) {
    return Number(await this.handle(name).getAttribute("aria-valuenow"));
  }

  /** The value of a handle in words. */
  async wordsOf(name) {
    return plain(await this.handle(name).getAttribute("aria-valuetext"));
  }

  /** The range of a handle. */
  async rangeOf(name) {
    const handle = this.handle(name);
    return [Number(await handle.getAttribute("aria-valuemin")), Number(await handle.getAttribute("aria-valuemax"))];
  }

  /** The middle of a handle in the window, CSS pixels. */
  async placeOf(name) {
    const handle = this.handle(name);
    await handle.scrollIntoViewIfNeeded();
    const { x, y, width, height } = await handle.boundingBox();
    return [x + width / 2, y + height / 2];
  }

  /** Takes hold of a handle and moves it without letting go. */
  async pull(name, [right, down], steps = 4) {
    const [x, y] = await this.placeOf(name);
    await this.page.mouse.move(x, y);
    await this.page.mouse.down();
    await this.page.mouse.move(x + right, y + down, { steps });
  }

  async drag(name, by, steps) {
    await this.pull(name, by, steps);
    await this.page.mouse.up();
  }

  /** Drags a handle with a finger. `last` is `touchEnd` or `touchCancel`. */
  async dragByTouch(name, [right, down], { steps = 4, last = "touchEnd" } = {}) {
    const [x, y] = await this.placeOf(name);
    const session = await this.page.context().newCDPSession(this.page);
    const touch = (type, touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
    await touch("touchStart", [{ x, y }]);
    for (let step = 1; step <= steps; step += 1) {
      await touch("touchMove", [{ x: x + (right * step) / steps, y: y + (down * step) / steps }]);
    }
    await touch(last, []);
    await session.detach();
  }

  /**
   * Notes what the first frame after each move of the pointer shows: the soak handle's words, the
   * sentence on carbon, the summary of the phase map. Gives the way to read the notes.
   */
  async watchSoakFrames() {
    await this.page.evaluate(() => {
      window.seen = [];
      const handle = document.querySelector("[data-handle=soak]");
      const map = document.querySelector(".stage .plot.tall canvas");
      addEventListener("pointermove", () =>
        requestAnimationFrame(() =>
          window.seen.push({
            handle: handle.getAttribute("aria-valuetext"),
            sentence: document.querySelector(".out .sentences .say").textContent,
            map: map.getAttribute("aria-label"),
          }),
        ),
      );
    });
    return () => this.page.evaluate(() => window.seen);
  }

  /** Presses keys on a handle, one after the other. */
  async press(name, ...keys) {
    for (const key of keys) await this.handle(name).press(key);
  }

  // -- Words of the sentences, and their panels

  /** A word that is a control, by what it sets: `Soak temperature`. The first where two set it. */
  word(name) {
    return this.page.locator(`.word > button[title="${name}"]`).first();
  }

  get wordButtons() {
    return this.page.locator(".word > button");
  }

  /** Every word that is a control, as plain text. */
  async words() {
    return (await this.wordButtons.allTextContents()).map(plain);
  }

  get panel() {
    return this.page.getByRole("dialog").and(this.page.locator(".panel"));
  }

  /** The words of the same sentence that the open panel covers, even in part. */
  wordsUnderPanel() {
    return this.panel.evaluate((panel) => {
      const { left, right, top, bottom } = panel.getBoundingClientRect();
      const covered = (area) => area.left < right && area.right > left && area.top < bottom && area.bottom > top;
      return [...panel.closest("p").querySelectorAll(".word > button")]
        .filter((word) => covered(word.getBoundingClientRect()))
        .map((word) => word.title);
    });
  }

  /** What has the focus inside the open panel. */
  get panelFocus() {
    return this.panel.locator(":focus");
  }

  get panelControls() {
    return this.panel.locator("button:visible, input:visible");
  }

  /** Opens the panel of a word. */
  async openWord(name) {
    await this.word(name).click();
    await this.panel.waitFor();
    return this.panel;
  }

  /** A field of the open panel, by its label, or the first. */
  field(label) {
    return label === undefined
      ? this.panel.locator("input.text").first()
      : this.panel.getByRole("textbox", { name: label, exact: true });
  }

  /** Types a text into a field of the open panel and presses Enter. */
  async type(text, label) {
    const field = this.field(label);
    await field.fill(text);
    await field.press("Enter");
  }

  /** What the open panel says is wrong. */
  get wrong() {
    return this.panel.locator(".wrong:not(:empty)");
  }

  /** What the panel lists to pick from. */
  get options() {
    return this.panel.getByRole("option");
  }

  option(value) {
    return this.panel.locator(`[role=option][data-value="${value}"]`);
  }

  /** Picks a grade and closes its panel. */
  async takeGrade(grade) {
    await this.openWord("The steel");
    await this.gradeSearch.fill(grade);
    await this.option(grade).click();
    await this.page.keyboard.press("Escape");
  }

  /** Picks a quenchant for the first bath and closes its panel. */
  async takeQuenchant(name) {
    await this.openWord("Quenchant");
    await this.option(name).click();
    await this.page.keyboard.press("Escape");
  }

  /** The quenchants that the open panel lists; its last entry leads to the user's own. */
  async quenchantNames() {
    const names = await this.options.evaluateAll((all) => all.map((one) => one.dataset.value));
    assert.equal(names.at(-1), "own");
    return names.slice(0, -1);
  }

  get gradeSearch() {
    return this.panel.getByRole("searchbox");
  }

  // -- Head

  /** Goes to a place of the page: `Bench`, `Shelf`, `Logbook` or `Sources`. */
  async go(place) {
    await this.page.getByRole("navigation").getByRole("button", { name: place, exact: true }).click();
  }

  /** Where what the bench opens with stands, CSS pixels, with the rings and the tags on its charts. */
  placesOnBench() {
    return this.page.evaluate(() => {
      const names = ".head button, .piece button, .route canvas, .blocks button, .stage > h2, .plot.tall canvas, .handle, .handle .ring, .tag, .plot.ladder, .plot.bar";
      const all = [...document.querySelectorAll(names)].filter((element) => element.getClientRects().length > 0);
      const place = (element) => {
        const { x, y, width, height } = element.getBoundingClientRect();
        return [x, y, width, height].map((length) => Math.round(10 * length) / 10);
      };
      return Object.fromEntries(all.map((element, i) => [`${i} ${element.className || element.localName}`, place(element)]));
    });
  }

  /** Goes through the places, whose parts are loaded when they are opened, and back to the bench. */
  async goesEverywhere() {
    for (const place of ["Decide", "Experiments", "Shelf", "Logbook", "Sources"]) {
      await this.go(place);
      await this.page.locator("main.leaf, main.logbook").first().waitFor();
    }
    await this.go("Bench");
    await this.tableOfQuenches.waitFor();
    await this.mapArrives();
  }

  /** One chart by itself, as an address asks for it. */
  get embedded() {
    return this.page.locator("main.embed");
  }

  /** A class together: the field of its files, what is wrong with some, the rows and their names. */
  get classFiles() {
    return this.page.getByLabel("Files of the class");
  }

  get classFaults() {
    return this.page.locator(".class .wrong li");
  }

  get classRows() {
    return this.page.locator(".class tbody tr");
  }

  get classNames() {
    return this.classRows.locator("th button");
  }

  /** The line that says that a newer version of the page is ready. */
  get newVersion() {
    return this.page.locator(".message.version");
  }

  // -- Parts of the program that are loaded when they are opened

  /** The quiet lines that stand where a part has not come yet. */
  get coming() {
    return this.page.locator(".coming[role=status]");
  }

  /** The line that says that a part could not be loaded. */
  get partMissing() {
    return this.page.locator(".coming[role=alert]");
  }

  get tableOfQuenches() {
    return this.page.locator(".quenches");
  }

  get logbook() {
    return this.page.locator(".logbook");
  }

  /** Where the focus is: in the open panel, in the main part of the page, elsewhere or nowhere. */
  whereFocusIs() {
    return this.page.evaluate(() => {
      const { activeElement, body } = document;
      if (!activeElement || activeElement === body) return "nowhere";
      if (activeElement.closest(".panel")) return "panel";
      return activeElement.closest("main") ? "main" : "elsewhere";
    });
  }

  // -- The card and the link

  get card() {
    return this.page.locator("article.card");
  }

  /** Prints the card, which shows it. */
  async toCard() {
    await this.button(/card$/i).click();
    await this.card.waitFor();
    await this.page.evaluate(() => document.fonts.ready);
  }

  /** Titles of the card's rows. */
  async cardSteps() {
    const titles = await this.card.locator(".steps tbody th").evaluateAll((all) => all.map((one) => one.firstChild.textContent));
    return titles.map(plain);
  }

  /** The address that brings the route on the bench, as it is copied; then the bench again. */
  async link() {
    await this.page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await this.toCard();
    await this.button("Copy link").click();
    await this.shows(() => this.message(), "The link is on the clipboard.");
    const link = await this.page.evaluate(() => navigator.clipboard.readText());
    await this.go("Bench");
    await this.sentenceList.first().waitFor({ state: "attached" });
    return link;
  }

  /** The phase map in words. */
  get phaseTable() {
    return this.page.locator("details", { hasText: "The phases as a table" });
  }

  async openPhaseTable() {
    await this.phaseTable.locator("summary").click();
    await this.shows(() => this.phaseTable.locator("table").count(), 2, "tables of phases");
  }

  /** Its tables as captions and rows of cells. */
  async phaseTables() {
    const tables = await this.phaseTable.locator("table").evaluateAll((tables) =>
      tables.map((table) => ({
        caption: table.caption.textContent,
        rows: [...table.tBodies[0].rows].map((row) => [...row.cells].map((cell) => cell.textContent)),
      })),
    );
    return tables.map(({ caption, rows }) => ({
      caption: plain(caption),
      rows: rows.map((row) => row.map(plain)),
    }));
  }

  /** Opens a part of the page by its title, and gives it. */
  async openPart(title) {
    const part = this.page.locator("details", { hasText: title });
    await part.locator("summary").click();
    return part;
  }

  /** Picks a segment of a group: `Temperatures`, `°F`. */
  async pick(group, word) {
    await this.page.getByRole("group", { name: group }).getByRole("button", { name: word, exact: true }).click();
  }

  /** Theme in force: `light` or `dark`. */
  theme() {
    return this.page.evaluate(() => document.documentElement.dataset.theme);
  }

  /** Everything that the program shows. */
  get app() {
    return this.page.locator("#app");
  }

  /** The place that is open. */
  get main() {
    return this.page.locator("main");
  }

  /** Elements that the program never makes, so that they can only come from a text. */
  get foreignElements() {
    return this.page.locator("#app img, #app script");
  }

  // -- Notices

  get messages() {
    return this.page.locator(".message");
  }

  /** The line above the bench, without its buttons. */
  async message() {
    const line = this.messages.locator("span").first();
    await line.waitFor();
    return plain(await line.textContent());
  }

  // -- The logbook

  /** Logs a run of the bench's route, and waits until it is open. */
  async logRun() {
    await this.button("Log a run").first().click();
    await this.page.getByRole("heading", { name: "Measured" }).waitFor();
  }

  /** The rows of the list, each as the texts of its cells. */
  runRows() {
    return this.page
      .locator(".runs tbody tr")
      .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent.replaceAll("\u00a0", " "))));
  }

  /** Waits until the list has so many rows. */
  runsAre(count) {
    return this.until(() => this.runRows(), (rows) => rows.length === count, `${count} runs in the list`);
  }

  /** Opens the run of a row. */
  openRun(index) {
    return this.page.locator(".runs tbody tr").nth(index).getByRole("button").click();
  }

  /** A field of the logbook by its label. */
  logField(label) {
    return this.page.locator(".logbook").getByLabel(label, { exact: true });
  }

  /** Writes into a field as a user does, who then leaves it. */
  async write(label, text) {
    await this.logField(label).fill(text);
    await this.logField(label).blur();
  }

  /** What is wrong with fields, as it is said beside them. */
  async wrongs() {
    const all = await this.page.locator(".logbook .wrong").allTextContents();
    return all.map(plain).filter((text) => text !== "");
  }

  /** What a file would bring, and the choices. */
  get incoming() {
    return this.page.locator(".incoming");
  }

  /** Hands a file to the logbook. */
  async handLogbook(text) {
    await this.page.getByLabel("Logbook to import").setInputFiles({
      name: "logbook.json",
      mimeType: "application/json",
      buffer: Buffer.from(text),
    });
  }

  /** Hands a picture to the open run. */
  async handPhoto(buffer) {
    await this.page.getByLabel("Photo to add").setInputFiles({ name: "photo.png", mimeType: "image/png", buffer });
  }

  /** Sizes of the photos of the open run as they are kept, px. */
  photoSizes() {
    return this.page
      .locator(".photos img")
      .evaluateAll((all) => all.map((image) => [image.naturalWidth, image.naturalHeight]));
  }

  /** How many texts a store of the browser's database holds. */
  recordCount(store) {
    return this.page.evaluate(
      (store) =>
        new Promise((done, failed) => {
          const request = indexedDB.open("recalesce.logbook");
          request.onerror = () => failed(request.error);
          request.onsuccess = () => {
            const count = request.result.transaction(store).objectStore(store).count();
            count.onsuccess = () => {
              request.result.close();
              done(count.result);
            };
          };
        }),
      store,
    );
  }

  /** What a button offers as a file: its name and text. */
  async offered(name) {
    const [download] = await Promise.all([this.page.waitForEvent("download"), this.button(name).click()]);
    return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
  }

  // -- The shelf

  /** Puts the route of the bench on the shelf. */
  async keep() {
    await this.page.locator(".tools").getByRole("button", { name: /^Keep/ }).click();
    await this.message();
  }

  get kept() {
    return this.page.locator(".kept");
  }

  /** Names on the shelf in their order. */
  names() {
    return this.kept.locator("input.title").evaluateAll((fields) => fields.map((field) => field.value));
  }

  nameField(index) {
    return this.kept.nth(index).locator("input.title");
  }

  /** A button of one route of the shelf. */
  shelfButton(index, name) {
    return this.kept.nth(index).getByRole("button", { name, exact: true });
  }

  async rename(index, name) {
    const field = this.nameField(index);
    await field.fill(name);
    await field.press("Enter");
  }

  /** Imports a text as if it were a file, and gives the line that says what came of it. */
  async import(text) {
    const before = await this.messages.count();
    if (before > 0) await this.button("Dismiss").click();
    await this.page.getByLabel("File to import").setInputFiles({
      name: "shelf.json",
      mimeType: "application/json",
      buffer: Buffer.from(text),
    });
    return this.message();
  }

  /** Exports the shelf; gives the name and the text of the file. */
  async export() {
    const [download] = await Promise.all([
      this.page.waitForEvent("download"),
      this.button("Export to a file").click(),
    ]);
    return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
  }

  // -- What the browser keeps

  /** The text kept under a key. */
  stored(key) {
    return this.page.evaluate((name) => localStorage.getItem(name), key);
  }

  /** Waits until the text under a key fits; gives it. */
  untilStored(key, fits) {
    return this.until(
      () => this.stored(key),
      (text) => text !== null && fits(text),
      `what is kept as ${key}`,
    );
  }

  /** Waits until the open route is kept and fits; gives it. */
  async savedRoute(fits = () => true) {
    const route = (text) => JSON.parse(text).routes[0].route;
    return route(await this.untilStored(KEYS.bench, (text) => fits(route(text))));
  }

  // -- The phone

  get tabs() {
    return this.page.getByRole("tab");
  }

  /** Handles that are held. */
  get held() {
    return this.page.locator(".handle.dragged");
  }

  /** Titles of the stages that are shown. */
  async shownStages() {
    const stages = this.page.locator(".stage");
    return stages.evaluateAll((all) =>
      all.filter((stage) => stage.checkVisibility()).map((stage) => stage.getAttribute("aria-label")),
    );
  }

  /** The figures at the foot of the window. */
  get dock() {
    return this.page.locator(".dock");
  }

  get figures() {
    return this.page.locator(".dock dd");
  }

  /** What the last of them is called, and it with its band. */
  async dockedHardness() {
    return (await this.dock.locator("div").last().locator("dt, dd").allInnerTexts()).map(plain);
  }

  /** How the dock judges its margin and its hardness, and how the sentences do: sign and colour of each. */
  verdicts() {
    return this.page.evaluate(() => {
      const name = (sign) => sign.getAttribute("aria-label");
      const docked = [...document.querySelectorAll(".dock dt svg")];
      const said = [...document.querySelectorAll(".sentences .say > svg")];
      return {
        docked: docked.map((sign) => [name(sign), getComputedStyle(sign.closest("div").querySelector("dd")).color]),
        said: [said[1], said.at(-1)].map((sign) => [name(sign), getComputedStyle(sign.querySelector("[class]")).fill]),
      };
    });
  }

  /** What stands below the name of each route on the shelf. */
  async keptLines() {
    return (await this.page.locator(".kept p").allInnerTexts()).map(plain);
  }

  /** What saves a table stands right below it, where the table begins. */
  async saveStandsBelow(table) {
    const button = this.page.getByRole("button", { name: `Save the table as CSV: ${table}`, exact: true });
    const [across, down] = await button.evaluate((element) => {
      const before = element.parentElement.previousElementSibling;
      const shown = (before.querySelector("table") ?? before).getBoundingClientRect();
      const { left, top } = element.getBoundingClientRect();
      return [left - shown.left, top - shown.bottom];
    });
    assert.ok(Math.abs(across) < 10 && down >= 0 && down < 10, `${table}: ${across} px beside, ${down} px below`);
  }

  /** How far the page is wider than the window, CSS pixels. */
  overflow() {
    return this.page.evaluate(() => document.scrollingElement.scrollWidth - innerWidth);
  }

  /** Whether all of the notice, its buttons included, lies inside the window. */
  noticeIsInside() {
    return this.page.locator(".message, .message button").evaluateAll((parts) =>
      parts.every((part) => {
        const { left, right, top, bottom } = part.getBoundingClientRect();
        return left >= 0 && top >= 0 && right <= innerWidth && bottom <= innerHeight;
      }),
    );
  }

  get head() {
    return this.page.locator(".head");
  }

  /** Commas and full stops that stand below the word of a sentence that they follow. */
  looseMarks() {
    return this.page.evaluate(() =>
      [...document.querySelectorAll(":is(.piece, .set) .word > button")].flatMap((word) => {
        const sentence = word.closest("p");
        const texts = document.createTreeWalker(sentence, NodeFilter.SHOW_TEXT);
        texts.currentNode = word.lastChild;
        let next = texts.nextNode();
        // A word without a mark has an empty text behind it.
        while (next?.data === "") next = texts.nextNode();
        if (word.getClientRects().length === 0 || !/^[,.]/.test(next?.data ?? "")) return [];
        const mark = document.createRange();
        mark.setStart(next, 0);
        mark.setEnd(next, 1);
        const { bottom } = word.getBoundingClientRect();
        return mark.getBoundingClientRect().top > bottom - 3 ? [`${word.textContent}${next.data}`] : [];
      }),
    );
  }

  /** Everything that can be pressed, dragged or typed and is no part of a sentence. */
  get controls() {
    return this.page.locator(
      ".places button, .tools button, .handle, .tag, .tabs button, .dock, .panel, .message button, input, select",
    );
  }

  /** Controls of the phone that are pressed often. */
  get mainControls() {
    return this.page.locator(".head button, .tabs button, .handle, .blocks button");
  }

  /** A block of the route strip, by the name of its step. */
  block(step) {
    return this.page.locator(".blocks").getByRole("button", { name: step });
  }

  // -- Which quench still does it

  get quenchCells() {
    return this.page.locator(".quenches td button");
  }

  /** A cell by the start of its label. */
  quenchCell(label) {
    return this.page.locator(`.quenches td button[aria-label^="${label.replaceAll(" mm", "\u00a0mm")}"]`);
  }

  quenchLabels() {
    return this.quenchCells.evaluateAll((all) => all.map((cell) => cell.getAttribute("aria-label")));
  }

  /** Label of the cell that is the route on the bench. */
  async quenchHere() {
    const here = this.page.locator(".quenches td button[aria-current]");
    return plain((await here.getAttribute("aria-label")) ?? "");
  }

  /** What stands in place of the table. */
  get quenchHint() {
    return this.page.locator(".quenches .scrolled .hint");
  }

  // -- Your own quenchant

  get own() {
    return this.page.locator("details.own");
  }

  get ownHead() {
    return this.own.locator("summary");
  }

  /** Opens the panel, in one of its two ways: `its figures` or `a probe curve`. */
  async openOwn(way) {
    if ((await this.own.getAttribute("open")) === null) await this.ownHead.click();
    await this.own.getByRole("button", { name: way, exact: true }).click();
  }

  /** A field of the panel, by its label. */
  ownField(label) {
    return this.own.getByRole("textbox", { name: label, exact: true });
  }

  /** A list of the panel that the browser opens, by its label. */
  ownList(label) {
    return this.own.getByRole("combobox", { name: label });
  }

  async typeOwn(label, text) {
    await this.ownField(label).fill(text);
    await this.ownField(label).press("Enter");
  }

  get ownCurve() {
    return this.ownField("Time and temperature, one reading per line");
  }

  /** Pastes a text into the field of the curve, in place of what stands there. */
  async pasteOwn(text) {
    await this.page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await this.ownCurve.focus();
    await this.page.evaluate((text) => navigator.clipboard.writeText(text), text);
    await this.page.keyboard.press("ControlOrMeta+A");
    await this.page.keyboard.press("ControlOrMeta+V");
    await this.shows(() => this.ownCurve.inputValue(), text, "the text is in the field");
  }

  ownButton(name) {
    return this.own.getByRole("button", { name, exact: true });
  }

  /** Takes a file as if it were picked. */
  pickOwn(name, text) {
    const file = { name, mimeType: "text/csv", buffer: Buffer.from(text) };
    return this.page.getByLabel("Probe curve", { exact: true }).setInputFiles(file);
  }

  /** Drops a file onto the panel. */
  async dropOwn(name, text) {
    const data = await this.page.evaluateHandle(
      ([name, text]) => {
        const transfer = new DataTransfer();
        transfer.items.add(new File([text], name, { type: "text/csv" }));
        return transfer;
      },
      [name, text],
    );
    await this.own.dispatchEvent("dragover", { dataTransfer: data });
    await this.own.dispatchEvent("drop", { dataTransfer: data });
  }

  /** How the work stands, in words. */
  async ownWork() {
    return plain(await this.own.locator(".actions [role=status]").first().textContent());
  }

  async ownFound() {
    await this.shows(() => this.ownWork(), "Found.", "the quenchant is found");
  }

  /** What is wrong with a field or the whole. */
  get ownWrong() {
    return this.own.locator(".wrong:not(:empty)");
  }

  /** The figures beside each other: name, given, computed, whether they agree. */
  ownFigures() {
    return this.own
      .locator("tbody tr")
      .evaluateAll((rows) => rows.map((row) => [...row.cells].map((cell) => cell.textContent)))
      .then((rows) => rows.map((row) => row.map(plain)));
  }

  async ownNotes() {
    return (await this.own.locator("li").allTextContents()).map(plain);
  }

  // -- Canvases

  /** The main plots: phase map, quench, temper. */
  get plots() {
    return this.page.locator(".stage .plot.tall canvas");
  }

  /** The sentence that stands for a plot where it cannot be seen. */
  async summary(plot) {
    return plain((await this.plots.nth(plot).getAttribute("aria-label")) ?? "");
  }

  /** The sentences of all plots. */
  async summaries() {
    const all = await this.page.locator("canvas").evaluateAll((list) => list.map((one) => one.getAttribute("aria-label")));
    return all.map((text) => plain(text ?? ""));
  }

  /** Classes of the boxes whose canvas says that it is a picture, and not of what. */
  namelessPictures() {
    return this.page
      .locator("canvas[role=img]")
      .evaluateAll((all) => all.filter((one) => !one.getAttribute("aria-label")).map((one) => one.parentElement.className));
  }

  /** Each canvas on show: its class, its pixels, and the device pixels of its box. */
  canvasSizes() {
    return this.page.locator("canvas").evaluateAll((all) =>
      all
        .filter((canvas) => canvas.checkVisibility())
        .map((canvas) => {
          const { width, height } = canvas.getBoundingClientRect();
          return {
            plot: canvas.parentElement.className,
            pixels: [canvas.width, canvas.height],
            box: [Math.round(width * devicePixelRatio), Math.round(height * devicePixelRatio)],
          };
        }),
    );
  }

  /** How many different colours each main plot is painted with. */
  coloursOfPlots() {
    return this.plots.evaluateAll((all) =>
      all.map((canvas) => {
        const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
        return new Set(new Uint32Array(data.buffer)).size;
      }),
    );
  }

  /** Mean lightness, 0 to 1, of what is painted of a main plot over the ground of its box. */
  lightnessOf(plot) {
    return this.plots.nth(plot).evaluate((canvas) => {
      const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
      let sum = 0;
      let weight = 0;
      for (let at = 0; at < data.length; at += 4) {
        const opaque = data[at + 3] / 255;
        sum += (opaque * (0.2126 * data[at] + 0.7152 * data[at + 1] + 0.0722 * data[at + 2])) / 255;
        weight += opaque;
      }
      return sum / weight;
    });
  }

  /** Milliseconds of the last recompute. */
  async recomputeMs() {
    return Number(await this.page.locator("main.bench").getAttribute("data-recompute-ms"));
  }

  // -- Accessibility

  /**
   * Faults against the accessibility rules of WCAG 2.2 A and AA, one line each. The earlier outcome
   * that is kept while a route has none is pale on purpose; what can be pressed is not.
   */
  async accessibilityFaults(rules = { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }) {
    const source = await readFile(new URL("node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
    await this.page.evaluate(source);
    // A table of before is pale until that of now is there.
    const pale = this.page.locator('.quenches[aria-busy="true"]');
    await this.until(() => pale.count(), (count) => count === 0, "the table of quenchants is of now");
    const { violations } = await this.page.evaluate((rules) => window.axe.run({ exclude: [".out .stale", ".route.stale canvas", ...["canvas", ".tag", "table", ".notes", ".hint", ".phone-only"].map((part) => `.stage.stale ${part}`)] }, rules), rules);
    return violations.flatMap(({ id, help, nodes }) => nodes.map(({ target }) => `${id}: ${help}: ${target}`));
  }

  /**
   * Goes through the place that is open by Tab alone, from its beginning to its end. What is wrong, one
   * line each: what is not reached, and what has no ring that is seen, of that contrast at least.
   */
  async tabThrough(contrast) {
    await this.page.evaluate((contrast) => {
      // Tab goes on from where the focus was last.
      document.body.tabIndex = -1;
      document.body.focus();
      document.body.removeAttribute("tabindex");
      const nameOf = (one) => {
        const name = one.getAttribute("aria-label") || one.title || one.labels?.[0]?.textContent || one.textContent;
        return `${one.localName} “${name.slice(0, 60)}”`;
      };
      const numbers = (colour) => (colour.match(/[\d.]+/g) ?? []).map(Number);
      const lightness = (colour) => {
        const linear = (value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
        const [r, g, b] = numbers(colour).map((value) => linear(value / 255));
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const ground = (one) => {
        for (let at = one; at; at = at.parentElement) {
          const { backgroundColor } = getComputedStyle(at);
          if ((numbers(backgroundColor)[3] ?? 1) > 0.5) return backgroundColor;
        }
        return getComputedStyle(document.documentElement).backgroundColor;
      };
      const faultOf = (one) => {
        const { outlineStyle, outlineWidth, outlineColor, outlineOffset } = getComputedStyle(one);
        if (outlineStyle === "none" || parseFloat(outlineWidth) < 2) return "has no ring";
        // Inside its box, or outside on what lies under it.
        const under = lightness(ground(parseFloat(outlineOffset) < 0 ? one : one.parentElement));
        const ring = lightness(outlineColor);
        const ratio = (Math.max(under, ring) + 0.05) / (Math.min(under, ring) + 0.05);
        return ratio < contrast ? `has a ring of contrast ${ratio.toFixed(2)} only` : undefined;
      };
      const reached = new Set();
      const faults = [];
      window.isAround = false;
      const hear = ({ target }) => {
        window.isAround ||= reached.has(target);
        reached.add(target);
        const fault = faultOf(target);
        if (fault) faults.push(`${nameOf(target)} ${fault}`);
      };
      addEventListener("focusin", hear);
      window.endOfTabs = () => {
        removeEventListener("focusin", hear);
        const all = [...document.querySelectorAll("button, input, select, textarea, summary, a[href], [tabindex], [data-handle]")];
        const missed = all.filter(
          (one) =>
            one.checkVisibility({ visibilityProperty: true }) &&
            !one.disabled &&
            !reached.has(one) &&
            one.getAttribute("aria-disabled") !== "true" &&
            // What is brought into view may take the focus and is no control; of a group one is reached,
            // the others by arrows; a file is asked for by a button.
            !(one.tabIndex < 0 && (/^(H\d|SECTION|DIV)$/.test(one.tagName) || one.type === "file" || one.closest("[role=tablist], [role=listbox], [role=radiogroup]"))),
        );
        return [...faults, ...missed.map((one) => `${nameOf(one)} is not reached`)];
      };
    }, contrast);
    // Many at once: each by itself would wait for an answer.
    const MANY = 20;
    for (let most = 40; most > 0; most -= 1) {
      await Promise.all(Array.from({ length: MANY }, () => this.page.keyboard.press("Tab")));
      if (await this.page.evaluate(() => window.isAround)) break;
    }
    return this.page.evaluate(() => [...new Set(window.endOfTabs())]);
  }

  /** What is pressed and smaller than that either way, CSS pixels, but for words of a sentence, which are as high as its line. */
  smallTargets(least_px) {
    return this.page.evaluate((least_px) => {
      const inSentence = (one) => one.matches(".word > button, button.number") && getComputedStyle(one).display.startsWith("inline");
      // A box that is ticked is pressed by its label.
      const pressed = (one) => (one.matches("[type=checkbox], [type=radio]") ? (one.labels?.[0] ?? one) : one);
      return [...document.querySelectorAll("button, input, select, textarea, summary, a[href], [tabindex='0']")]
        .filter((one) => one.checkVisibility({ visibilityProperty: true }) && !one.closest(".unseen") && !inSentence(one))
        .map((one) => [one, pressed(one).getBoundingClientRect()])
        .filter(([, { width, height }]) => width > 1 && (width < least_px || height < least_px))
        .map(([one, { width, height }]) => `${one.localName} “${(one.getAttribute("aria-label") || one.title || one.textContent).slice(0, 60)}”: ${width} × ${height}`);
    }, least_px);
  }

  /** What has the focus, as `title`, `aria-label` or text. */
  focused() {
    return this.page.evaluate(() => {
      const held = document.activeElement;
      if (held === document.body) return "";
      return held.title || held.getAttribute("aria-label") || held.labels?.[0]?.textContent || held.textContent;
    });
  }

  close() {
    return this.page.context().close();
  }
}
