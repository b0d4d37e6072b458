// A class: files that students exported, beside each other; nothing of them is kept.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, exampleOf, launch, plain } from "./bench_page.mjs";

let browser, example;
before(async () => {
  browser = await launch();
  example = await exampleOf(browser);
});
after(() => browser.close());

const fileOf = (name, text) => ({ name, mimeType: "application/json", buffer: Buffer.from(text) });

/** The file of a student whose soak is at a temperature. */
function handed(name, soak_c, format = {}) {
  const route = structuredClone(example);
  route.soak.temperature_c = soak_c;
  return fileOf(`${name}.json`, JSON.stringify({ format: "recalesce", version: 6, kind: "shelf", routes: [{ id: 1, name: "knife", route }], ...format }));
}

const SCRIPT = "<img src=x onerror=window.hacked=1>";
/** Twenty-eight that are right, one of them with a script for a name, and two that are not. */
const files = () => [
  ...Array.from({ length: 27 }, (_, i) => handed(`pupil ${String(i + 1).padStart(2, "0")}`, 790 + 4 * i)),
  handed(SCRIPT, 800),
  fileOf("broken.json", "{\"format\":\"recalesce\""),
  handed("too hot", 5000),
];

async function classOf(options) {
  const bench = await BenchPage.ready(browser, options);
  await bench.go("Experiments");
  await bench.button("a class together").click();
  await bench.classFiles.waitFor({ state: "attached" });
  return bench;
}

test("thirty files are shown together, two bad ones are told, and a name is only ever text", async () => {
  const bench = await classOf({ acceptDownloads: true });
  assert.deepEqual(await bench.accessibilityFaults(), []);
  await bench.classFiles.setInputFiles(files());
  await bench.page.getByText("28 routes.").waitFor();
  const faults = (await bench.classFaults.allInnerTexts()).sort();
  assert.equal(faults.length, 2);
  assert.match(faults[0], /^“broken\.json”: The file is cut short/);
  assert.match(faults[1], /^“too hot\.json”: .*5000/);
  assert.equal(await bench.page.evaluate(() => window.hacked), undefined);
  assert.deepEqual(await bench.accessibilityFaults(), []);

  const names = async () => (await bench.classNames.allInnerTexts()).map(plain);
  assert.equal((await names())[0], SCRIPT);
  assert.equal(await bench.classRows.count(), 28);

  // Ordered by a number, up and down.
  const soaks = async () => (await bench.classRows.locator("td:nth-of-type(3)").allInnerTexts()).map(Number);
  await bench.button("soak temperature, °C").click();
  const rising = await soaks();
  assert.deepEqual(rising, [...rising].sort((a, b) => a - b));
  await bench.button("soak temperature, °C").click();
  assert.deepEqual(await soaks(), [...rising].reverse());

  // Another number on an axis; and the table as a file, in the order shown.
  await bench.page.getByLabel("Across").selectOption({ label: "soak temperature, °C" });
  assert.match(await bench.page.locator(".class canvas").getAttribute("aria-label"), /^hardness after the last step, HRC against soak temperature, °C of 28 routes/);
  const [download] = await Promise.all([bench.page.waitForEvent("download"), bench.button("Export the table").click()]);
  const lines = (await readFile(await download.path(), "utf8")).trim().split("\r\n");
  assert.equal(lines.length, 29);
  assert.match(lines[1], /^pupil 27,marking knife,52100,/);

  // Nothing of it is kept.
  assert.deepEqual(await bench.page.evaluate(() => Object.keys(localStorage)), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("a point that is pressed goes to the bench, and the undo brings back what was there", async () => {
  const bench = await classOf();
  await bench.classFiles.setInputFiles([handed("low", 780), handed("high", 900)]);
  await bench.page.getByText("2 routes.").waitFor();
  await bench.page.getByLabel("Across").selectOption({ label: "soak temperature, °C" });
  const box = await bench.page.locator(".class .points").boundingBox();
  // The one at the right end of the axis with its room, wherever it stands.
  const right = 46 + (1.08 / 1.16) * (box.width - 60);
  for (let y = 8; y < box.height && (await bench.page.locator(".class").count()); y += 16) {
    await bench.page.mouse.click(box.x + right, box.y + y);
  }
  await bench.messages.filter({ hasText: "On the bench: “high”." }).waitFor();
  await bench.savedRoute(({ soak }) => soak.temperature_c === 900);
  await bench.messages.getByRole("button", { name: "Undo" }).click();
  await bench.savedRoute(({ soak }) => soak.temperature_c === 830);

  // The class is still there, and a name in its table does the same by key.
  await bench.go("Experiments");
  await bench.button("Put on the bench: low").focus();
  await bench.page.keyboard.press("Enter");
  await bench.savedRoute(({ soak }) => soak.temperature_c === 780);
  bench.assertNoTrouble();
  await bench.close();
});

test("files are dropped as well, a shelf of several and a newer one among them", async () => {
  const bench = await classOf({ viewport: PHONE, colorScheme: "dark" });
  const two = JSON.parse(handed("Ada", 820).buffer.toString());
  two.routes.push({ ...two.routes[0], id: 2, name: "chisel" });
  const texts = { "Ada.json": JSON.stringify(two), "Ben.json": handed("Ben", 840, { version: 999 }).buffer.toString(), "Cleo.json": handed("Cleo", 850).buffer.toString() };
  const data = await bench.page.evaluateHandle((texts) => {
    const transfer = new DataTransfer();
    for (const [name, text] of Object.entries(texts)) transfer.items.add(new File([text], name, { type: "application/json" }));
    return transfer;
  }, texts);
  await bench.page.dispatchEvent(".class", "drop", { dataTransfer: data });
  await bench.page.getByText("3 routes.").waitFor();
  assert.deepEqual((await bench.classNames.allInnerTexts()).map(plain), ["Ada: chisel", "Ada: knife", "Cleo"]);
  assert.match((await bench.classFaults.allInnerTexts()).join(), /^“Ben\.json”: The file is of version 999/);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  const wide = await bench.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  assert.ok(wide <= 0, `${wide} px too wide`);
  await bench.button("Start again").click();
  await bench.page.getByText("No file yet.").waitFor();
  bench.assertNoTrouble();
  await bench.close();
});

test("more files than can be taken together are refused in a line", async () => {
  const bench = await classOf();
  await bench.classFiles.setInputFiles(Array.from({ length: 201 }, (_, i) => fileOf(`${i}.json`, "{}")));
  await bench.classFaults.first().waitFor();
  assert.deepEqual(await bench.classFaults.allInnerTexts(), ["201 files are too many: at most 200 are taken together."]);
  await bench.close();
});

test("a class as large as it may be comes together, and what is over is told", async () => {
  const bench = await classOf();
  await bench.classFiles.setInputFiles(Array.from({ length: 151 }, (_, i) => {
    const file = JSON.parse(handed(`${i}`, 780 + 0.5 * i).buffer.toString());
    file.routes.push({ ...file.routes[0], id: 2, name: "chisel" });
    return fileOf(`${i}.json`, JSON.stringify(file));
  }));
  await bench.page.getByText("300 routes.").waitFor({ timeout: 60_000 });
  assert.equal(await bench.classRows.count(), 300);
  const faults = await bench.classFaults.allInnerTexts();
  assert.equal(faults.length, 1);
  assert.match(faults[0], /: no room for 2; at most 300 routes are shown\.$/);
  bench.assertNoTrouble();
  await bench.close();
});
