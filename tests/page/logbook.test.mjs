// The logbook: runs logged, measured, listed, carried out and in; photos; and what is said where the
// browser keeps nothing. All runs are made up.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, launch } from "./bench_page.mjs";

const SAVED = await readFile(new URL("../saved/v5_logbook.json", import.meta.url), "utf8");
/** How long a filter of a thousand runs may take until the list is drawn, ms. */
const PROMPT_MS = 1000;

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** The page at its logbook. */
async function atLogbook(options) {
  const bench = await BenchPage.ready(browser, options);
  await bench.go("Logbook");
  return bench;
}

/** The page with the saved logbook taken in. */
async function withSaved(options) {
  const bench = await atLogbook(options);
  await bench.page.getByText("Nothing is logged yet").waitFor();
  await bench.handLogbook(SAVED);
  await bench.incoming.getByRole("button", { name: "Add the new" }).click();
  await bench.runsAre(3);
  return bench;
}

test("an empty logbook says what it is for", async () => {
  const bench = await atLogbook();
  await bench.page.getByText("Nothing is logged yet").waitFor();
  assert.equal(await bench.button("Export to a file").isDisabled(), true);
  bench.assertNoTrouble();
  await bench.close();
});

test("a run is logged, measured, changed, and still there after a reload", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.logRun();
  await bench.button("Add a hardness reading").click();
  await bench.write("Hardness", "61,5");
  await bench.write("Place", "edge");
  await bench.page.getByText(/measured 61\.5\sHRC/).waitFor();
  await bench.write("Hardness", "615");
  await bench.until(() => bench.wrongs(), (all) => /outside 0 to 72/.test(all.join()), "the fault is told");
  assert.equal(await bench.logField("Hardness").inputValue(), "615", "what was typed stays");
  await bench.write("Hardness", "60.5");
  await bench.until(() => bench.wrongs(), (all) => all.length === 0, "the fault is gone");
  await bench.write("Notes", "the edge took a file for a moment");
  await bench.write("Grain by fracture, ASTM number", "9");
  await bench.button("Add a test in use").click();
  await bench.write("Test", "cuts until it no longer shaves");
  await bench.write("Result", "120");
  await bench.write("Unit", "cuts");
  await bench.button("All runs").click();
  const [row] = await bench.runsAre(1);
  assert.equal(row[7], "60.5");
  await bench.shows(() => bench.recordCount("runs"), 1);
  await bench.reload();
  await bench.go("Logbook");
  assert.deepEqual(await bench.runsAre(1), [row]);
  await bench.openRun(0);
  assert.equal(await bench.logField("Hardness").inputValue(), "60.5");
  assert.equal(await bench.logField("Notes").inputValue(), "the edge took a file for a moment");
  assert.equal(await bench.logField("Unit").inputValue(), "cuts");
  bench.assertNoTrouble();
  await bench.close();
});

test("a note is written letter by letter, and the field keeps the focus", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.logRun();
  await bench.logField("Notes").focus();
  await bench.page.keyboard.type("soft at the tang");
  assert.equal(await bench.logField("Notes").inputValue(), "soft at the tang");
  await bench.shows(() => bench.recordCount("runs"), 1);
  await bench.reload();
  await bench.go("Logbook");
  await bench.runsAre(1);
  await bench.openRun(0);
  await bench.shows(() => bench.logField("Notes").inputValue(), "soft at the tang");
  bench.assertNoTrouble();
  await bench.close();
});

test("changes of a run are undone and done again, field by field", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.logRun();
  const undo = bench.button("Undo in this run");
  const redo = bench.button("Redo in this run");
  const coupon = () => bench.logField("Coupon quenched beside it: hardness, look of its fracture");
  assert.equal(await undo.isDisabled(), true);
  await bench.write("Grain by fracture, ASTM number", "9");
  await coupon().fill("65 HRC, velvety");
  await undo.click();
  await bench.shows(() => coupon().inputValue(), "");
  assert.equal(await bench.logField("Grain by fracture, ASTM number").inputValue(), "9");
  await undo.click();
  await bench.shows(() => bench.logField("Grain by fracture, ASTM number").inputValue(), "");
  assert.equal(await undo.isDisabled(), true);
  await redo.click();
  await redo.click();
  await bench.shows(() => coupon().inputValue(), "65 HRC, velvety");
  bench.assertNoTrouble();
  await bench.close();
});

test("what was done to the logbook is undone and done again, by button and by key", async () => {
  const bench = await withSaved();
  const undo = bench.button("Undo in the logbook");
  const redo = bench.button("Redo in the logbook");
  const piece = async () => (await bench.page.locator(".runs tbody tr").allInnerTexts()).join("|");
  const imported = await piece();
  // That of bench and shelf is for where they are seen.
  const ofBench = bench.button("Undo the last change of bench or shelf");
  await bench.go("Bench");
  await bench.press("temper", "PageUp");
  await ofBench.and(bench.page.locator(":enabled")).waitFor();
  await bench.go("Logbook");
  assert.equal(await ofBench.isDisabled(), true);
  // Logged, then edited: two changes.
  await bench.logRun();
  await bench.write("Notes", "a little soft at the tang");
  await bench.button("All runs").click();
  await bench.runsAre(4);
  // Deleted from the list of the run that was imported.
  await bench.openRun(3);
  await bench.button("Delete").click();
  await bench.runsAre(3);
  await undo.click();
  await bench.runsAre(4);
  await bench.page.getByRole("heading", { name: "Logbook" }).click();
  await bench.page.keyboard.press("Control+z");
  await bench.openRun(0);
  assert.equal(await bench.logField("Notes").inputValue(), "");
  // In the run nothing is left to undo field by field: the key goes on with the book, and the run goes.
  await bench.page.getByRole("heading", { level: 2 }).first().click();
  await bench.page.keyboard.press("Control+z");
  await bench.runsAre(3);
  assert.equal(await piece(), imported);
  await bench.shows(() => bench.recordCount("runs"), 3);
  // The import too.
  await undo.click();
  await bench.page.getByText("Nothing is logged yet").waitFor();
  assert.equal(await undo.isDisabled(), true);
  await bench.shows(() => bench.recordCount("runs"), 0);
  await bench.shows(() => bench.recordCount("photos"), 0);
  await redo.click();
  await bench.runsAre(3);
  assert.equal(await piece(), imported);
  await bench.shows(() => bench.recordCount("photos"), 1);
  await redo.click();
  await bench.runsAre(4);
  await bench.page.keyboard.press("Control+Shift+z");
  await bench.openRun(0);
  assert.equal(await bench.logField("Notes").inputValue(), "a little soft at the tang");
  await bench.button("All runs").click();
  await redo.click();
  await bench.runsAre(3);
  assert.equal(await redo.isDisabled(), true);
  bench.assertNoTrouble();
  await bench.close();
});

test("two runs stand side by side, what differs first", async () => {
  const bench = await withSaved();
  const ticks = bench.page.locator(".runs tbody input");
  await ticks.nth(0).check();
  await bench.page.getByText("Tick one more").waitFor();
  await ticks.nth(2).check();
  const rows = bench.page.locator(".side-by-side tbody tr");
  await rows.first().waitFor();
  const differ = await rows.evaluateAll((all) => all.map((row) => row.classList.contains("differs")));
  assert.deepEqual(differ, [...differ].sort((one, other) => Number(other) - Number(one)));
  assert.ok(differ[0]);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  await bench.button("Put them away").click();
  await bench.page.getByText("Tick two runs").waitFor();
  bench.assertNoTrouble();
  await bench.close();
});

test("what is typed and wrong is still there after a look at the bench", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.logRun();
  await bench.write("Retained austenite, vol %", "much");
  await bench.go("Bench");
  await bench.go("Logbook");
  assert.equal(await bench.logField("Retained austenite, vol %").inputValue(), "much");
  assert.match((await bench.wrongs()).join(), /“much” is not a number/);
  await bench.close();
});

test("runs are filtered and sorted", async () => {
  const bench = await withSaved();
  const pieces = async () => (await bench.runRows()).map((row) => row[1].split(/[ ,]/)[0]);
  assert.deepEqual(await pieces(), ["Plane", "Chisel", "Marking"]);
  await bench.logField("Order").selectOption("farthest from predicted");
  await bench.until(pieces, (now) => now[2] === "Plane", "the one without a reading is last");
  await bench.logField("Piece").fill("CHISEL");
  await bench.runsAre(1);
  await bench.logField("Piece").fill("");
  await bench.logField("measured only").check();
  await bench.runsAre(2);
  await bench.logField("To").fill("2026-03-05");
  await bench.runsAre(1);
  await bench.logField("To").fill("");
  await bench.logField("Grade").selectOption("52100");
  const [knife] = await bench.runsAre(1);
  assert.equal(knife[2], "52100");
  await bench.page.getByText(/1 measured of 52100/).waitFor();
  bench.assertNoTrouble();
  await bench.close();
});

test("measured stands against predicted in a chart that can be read aloud", async () => {
  const bench = await withSaved();
  const summary = () => bench.page.locator(".agreement canvas").getAttribute("aria-label");
  assert.match(await bench.until(summary, Boolean, "a summary"), /of 2 logged runs: \d inside the band/);
  bench.assertNoTrouble();
  await bench.close();
});

test("a run is deleted, with its photo, and comes back by Undo", async () => {
  const bench = await withSaved();
  await bench.openRun(2);
  await bench.button("Delete").click();
  await bench.runsAre(2);
  assert.match(await bench.message(), /is deleted/);
  assert.equal(await bench.focused(), "Undo");
  await bench.shows(() => bench.recordCount("photos"), 0);
  await bench.undoOfMessage.click();
  await bench.runsAre(3);
  await bench.shows(() => bench.recordCount("runs"), 3);
  await bench.shows(() => bench.recordCount("photos"), 1);
  bench.assertNoTrouble();
  await bench.close();
});

test("the exported file gives the same logbook, and the table has a line per run", async () => {
  const bench = await withSaved();
  const { name, text } = await bench.offered("Export to a file");
  assert.match(name, /\.json$/);
  const [file, saved] = [JSON.parse(text), JSON.parse(SAVED)];
  const byId = (runs) => Object.fromEntries(runs.map((run) => [run.id, run.notes]));
  assert.deepEqual(byId(file.runs), byId(saved.runs));
  assert.deepEqual(file.photos, saved.photos);
  const table = await bench.offered("Export the list as CSV");
  assert.match(table.name, /\.csv$/);
  assert.equal(table.text.split("\r\n").length, 5);
  await bench.handLogbook(text);
  assert.match(await bench.incoming.innerText(), /0 new, 3 that you have just so, 0/);
  bench.assertNoTrouble();
  await bench.close();
});

for (const [what, text] of Object.entries({
  "cut short": SAVED.slice(0, 900),
  "of a newer version": JSON.stringify({ ...JSON.parse(SAVED), version: 99 }),
  "of routes": JSON.stringify({ format: "recalesce", version: 1, kind: "shelf", routes: [] }),
  empty: "",
})) {
  test(`a file ${what} is refused in one line and loses nothing`, async () => {
    const bench = await withSaved();
    await bench.button("Dismiss").click();
    await bench.handLogbook(text);
    assert.match(await bench.message(), /^Nothing was imported\. /);
    assert.equal(await bench.incoming.count(), 0);
    await bench.runsAre(3);
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("an import shows what differs, and overwrites only when asked", async () => {
  const bench = await withSaved();
  const file = JSON.parse(SAVED);
  file.runs[1].notes = "from the other bench";
  file.runs[0].readings[1].value = 1e9;
  file.runs.push({ ...file.runs[2], id: "iron-2" });
  const notes = async () => {
    await bench.page.locator(".runs tbody tr", { hasText: "Chisel" }).first().getByRole("button").click();
    const text = await bench.logField("Notes").inputValue();
    await bench.button("All runs").click();
    return text;
  };
  await bench.handLogbook(JSON.stringify(file));
  const said = await bench.incoming.innerText();
  assert.match(said, /1 new, 1 that you have just so, 1 that you have otherwise/);
  assert.match(said, /Otherwise: “Chisel, 12 mm”, 2026-03-09/);
  assert.match(said, /1 cannot be read\. run 1: .*readings\[1\]\.value/);
  await bench.button("Leave it").click();
  await bench.runsAre(3);
  await bench.handLogbook(JSON.stringify(file));
  await bench.button("Add the new").click();
  await bench.runsAre(4);
  assert.equal(await notes(), "");
  await bench.handLogbook(JSON.stringify(file));
  await bench.button("Add, and replace those that differ").click();
  await bench.message();
  await bench.shows(notes, "from the other bench");
  await bench.undoOfMessage.click();
  await bench.shows(notes, "");
  await bench.handLogbook(JSON.stringify(file));
  await bench.button("Add, and keep both").click();
  await bench.runsAre(5);
  bench.assertNoTrouble();
  await bench.close();
});

test("a script in a piece stays text", async () => {
  const file = JSON.parse(SAVED);
  file.runs[0].route.piece = '<img src=x onerror="window.attacked=1">';
  const bench = await atLogbook();
  await bench.handLogbook(JSON.stringify(file));
  await bench.button("Add the new").click();
  await bench.runsAre(3);
  await bench.openRun(2);
  await bench.page.getByRole("heading", { name: "<img src=x" }).waitFor();
  assert.equal(await bench.page.evaluate(() => window.attacked), undefined);
  bench.assertNoTrouble();
  await bench.close();
});

test("a photo is scaled down, kept, and taken off with Undo", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.logRun();
  // A picture of 2000 by 1000, painted by the browser itself.
  const address = await bench.page.evaluate(() => {
    const canvas = Object.assign(document.createElement("canvas"), { width: 2000, height: 1000 });
    canvas.getContext("2d").fillRect(0, 0, 900, 900);
    return canvas.toDataURL("image/png");
  });
  await bench.handPhoto(Buffer.from(address.split(",")[1], "base64"));
  const scaled = (sizes) => JSON.stringify(sizes) === "[[1024,512]]";
  await bench.until(() => bench.photoSizes(), scaled, "one photo of 1024 by 512");
  await bench.shows(() => bench.recordCount("photos"), 1);
  await bench.shows(() => bench.recordCount("runs"), 1);
  await bench.reload();
  await bench.go("Logbook");
  await bench.runsAre(1);
  await bench.openRun(0);
  await bench.until(() => bench.photoSizes(), scaled, "the photo is there again");
  await bench.button("Remove the photo").click();
  await bench.shows(() => bench.recordCount("photos"), 0);
  await bench.undoOfMessage.click();
  await bench.until(() => bench.photoSizes(), scaled, "the photo is back");
  await bench.handPhoto(Buffer.from("no picture"));
  assert.match(await bench.message(), /The photo was not added/);
  bench.assertNoTrouble();
  await bench.close();
});

const denied = (page) => page.addInitScript(() => Object.defineProperty(window, "indexedDB", { get: () => undefined }));
const full = (page) =>
  page.addInitScript(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
const soonFull = (page) =>
  page.addInitScript(() => {
    StorageManager.prototype.estimate = async () => ({ usage: 85, quota: 100 });
  });

for (const [what, prepare, said] of [
  ["denied", denied, /keeps no logbook/],
  ["full", full, /store is full/],
  ["soon full", soonFull, /will soon be full/],
]) {
  test(`where the browser's database is ${what} it is said in one line, and the page goes on`, async () => {
    const bench = await BenchPage.ready(browser, { before: prepare });
    await bench.logRun();
    await bench.button("Add a hardness reading").click();
    await bench.write("Hardness", "61.5");
    assert.match(await bench.message(), said);
    assert.equal(await bench.messages.count(), 1);
    const { text } = await bench.offered("Export now");
    assert.equal(JSON.parse(text).runs[0].readings[0].value, 61.5);
    await bench.button("All runs").click();
    await bench.runsAre(1);
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("what one tab logs the other shows", async () => {
  const bench = await withSaved();
  const other = new BenchPage(await bench.page.context().newPage(), bench.url);
  await other.page.goto(bench.url);
  await other.started();
  await other.logRun();
  await bench.runsAre(4);
  await bench.close();
});

test("a thousand runs are listed and filtered without delay", async () => {
  const bench = await atLogbook();
  const file = JSON.parse(SAVED);
  const [knife, chisel] = file.runs;
  file.runs = Array.from({ length: 1000 }, (_, n) => ({ ...(n % 2 ? knife : chisel), id: `run-${n}`, photos: [] }));
  await bench.handLogbook(JSON.stringify(file));
  await bench.button("Add the new").click();
  await bench.runsAre(100);
  await bench.shows(() => bench.recordCount("runs"), 1000);
  // From the press of a key until the frame that shows it.
  const took_ms = await bench.page.evaluate(async () => {
    const search = document.querySelector(".asked input[type=search]");
    const start = performance.now();
    search.value = "knife";
    search.dispatchEvent(new Event("input", { bubbles: true }));
    await new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)));
    return performance.now() - start;
  });
  await bench.page.getByText("500 of 1000 runs").waitFor();
  assert.ok(took_ms < PROMPT_MS, `${took_ms} ms`);
  await bench.button("Show more").click();
  await bench.runsAre(200);
  bench.assertNoTrouble();
  await bench.close();
});

test("on the phone the logbook does not reach beyond the window", async () => {
  const bench = await withSaved({ viewport: PHONE });
  const beyond = () => bench.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  assert.ok((await beyond()) <= 0, `${await beyond()} px`);
  await bench.openRun(2);
  assert.ok((await beyond()) <= 0, `${await beyond()} px`);
  bench.assertNoTrouble();
  await bench.close();
});

for (const colorScheme of ["light", "dark"]) {
  test(`no accessibility faults in the list, the import and an open run (${colorScheme})`, async () => {
    const bench = await withSaved({ colorScheme });
    const faults = [...(await bench.accessibilityFaults())];
    const file = JSON.parse(SAVED);
    file.runs[0].notes = "otherwise";
    await bench.handLogbook(JSON.stringify(file));
    await bench.incoming.waitFor();
    faults.push(...(await bench.accessibilityFaults()));
    await bench.button("Leave it").click();
    await bench.openRun(2);
    await bench.write("Grain by fracture, ASTM number", "fine");
    faults.push(...(await bench.accessibilityFaults()));
    assert.deepEqual([...new Set(faults)], []);
    assert.deepEqual(await bench.namelessPictures(), []);
    await bench.close();
  });
}

test("the logbook is used by keys alone", async () => {
  const bench = await withSaved();
  await bench.page.locator(".runs tbody button").first().focus();
  await bench.page.keyboard.press("Enter");
  await bench.page.getByRole("heading", { name: "Measured" }).waitFor();
  // The heading has the focus, so that the next Tab is the first of its buttons.
  await bench.page.keyboard.press("Tab");
  assert.equal(await bench.focused(), "All runs");
  await bench.page.keyboard.press("Enter");
  await bench.runsAre(3);
  bench.assertNoTrouble();
  await bench.close();
});
