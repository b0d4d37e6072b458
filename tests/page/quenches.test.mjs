// The table of quenchants and sizes, which a second thread computes.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

test("every quenchant has a verdict for every size, and the one in use is marked", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.quenchCells.first().waitFor();
  const labels = (await bench.quenchLabels()).map(plain);
  assert.ok(labels.length > 100, `${labels.length} cells`);
  for (const label of labels) {
    assert.match(label, /, [\d.]+ mm: (fast enough|borderline|too slow), ×[\d.]+ [+−][\d.]+ (s|min|h) to spare$/);
  }
  assert.match(await bench.quenchHere(), /^Medium oil, 4\.0 mm: fast enough/);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("a drag to where nothing hardens puts the table out of sight and brings the same one back", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.quenchCells.first().waitFor();
  const table = bench.page.locator(".quenches table");
  await table.evaluate((table) => (table.dataset.mark = "first"));
  const labels = await bench.quenchLabels();
  await bench.press("soak", "Home");
  await bench.quenchHint.waitFor();
  await table.waitFor({ state: "hidden" });
  await bench.page.keyboard.press("Control+z");
  await table.waitFor();
  assert.equal(await table.getAttribute("data-mark"), "first");
  await bench.until(() => bench.quenchLabels(), (now) => now.join() === labels.join(), "the cells of before");
  assert.equal(await bench.quenchHint.count(), 0);
  bench.assertNoTrouble();
  await bench.close();
});

test("a cell loads its quenchant and its size", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.quenchCells.first().waitFor();
  await bench.quenchCell("Fast oil, 6.0 mm").click();
  const loaded = await bench.savedRoute((route) => route.quench.medium === "oil_fast");
  assert.equal(loaded.section.spine_mm, 6);
  assert.equal(loaded.quench.agitation, 1);
  await bench.shows(async () => /^Fast oil, 6\.0 mm/.test(await bench.quenchHere()), true);
  bench.assertNoTrouble();
  await bench.close();
});

test("the table follows the soak while it is dragged, and says why where there is none", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.quenchCells.first().waitFor();
  const before = await bench.quenchLabels();
  await bench.drag("soak", [0, -40], 8);
  await bench.until(bench.quenchLabels.bind(bench), (labels) => labels.join() !== before.join(), "the table changes");
  await bench.press("soak", "Home");
  await bench.quenchHint.waitFor();
  assert.match(plain(await bench.quenchHint.textContent()), /^Below A1 nothing hardens: the soak is at 600 °C/);
  bench.assertNoTrouble();
  await bench.close();
});

test("a quenchant that is not in the list as it is used has a row where its speed puts it", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.quenchCells.first().waitFor();
  await bench.openWord("Quenchant");
  await bench.type("75 °C", "Temperature of the bath");
  await bench.page.keyboard.press("Escape");
  const warm = bench.page.locator(".quenches tbody tr.here");
  await bench.shows(async () => plain(await warm.locator("th").innerText()).split("\n")[0].trim(), "Medium oil, 75 °C");
  assert.match(await bench.quenchHere(), /^Medium oil, 75 °C, 4\.0 mm: /);
  await bench.quenchCell("Medium oil, 75\u00a0°C, 6.0 mm").click();
  const loaded = await bench.savedRoute((route) => route.section.spine_mm === 6);
  assert.deepEqual(loaded.quench.medium, { listed: "oil_medium", bath_c: 75 });
  bench.assertNoTrouble();
  await bench.close();
});

test("each place of the section has its verdict, margin and what it is lost to", async () => {
  const bench = await BenchPage.ready(browser);
  const rows = bench.page.locator("table[aria-label='Each place of the section'] tbody tr");
  await rows.first().waitFor();
  const told = async () => (await rows.evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.innerText)))).map((row) => row.map(plain));
  const names = (await told()).map(([name]) => name);
  assert.deepEqual(names, ["cutting edge", "quarter height", "mid height", "three-quarter height", "spine core", "surface"]);
  for (const [, verdict, margin, spare, lost] of await told()) {
    assert.match(verdict.trim(), /^(fast enough|borderline|too slow)$/);
    assert.match(margin, /^×[\d.]+$/);
    assert.match(spare, /^[+−][\d.]+ (s|min)$/);
    assert.match(lost, /^(–|[\d.]+ % (ferrite|pearlite|bainite))$/);
  }
  await bench.openWord("Section");
  await bench.pick("Shape", "square");
  await bench.until(told, (rows) => rows.map(([name]) => name).join() === "centre,surface,corner", "the places of a square bar");
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("what is known of a quenchant opens beside it", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Quenchant");
  await bench.page.getByText("What is known of it").first().click();
  const facts = bench.page.locator(".facts").first();
  await facts.locator("table").waitFor();
  const text = plain(await facts.innerText());
  for (const words of ["nickel-ball time", "11 to 14 s", "H of handbooks", "0.30 to 0.40", "effective H", "within ×1.30 either way", "recalled from memory", "Oil burns"]) {
    assert.ok(text.includes(words), `${words} in ${text}`);
  }
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("on the phone the table scrolls by itself, not the page", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  await bench.quenchCells.first().waitFor();
  assert.ok((await bench.overflow()) <= 0);
  bench.assertNoTrouble();
  await bench.close();
});
