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
    assert.match(label, /, [\d.]+ mm: (fast enough|at the edge|too slow), [+−][\d.]+ (s|min|h)/);
  }
  assert.match(await bench.quenchHere(), /^Medium oil, 4\.0 mm: fast enough/);
  assert.deepEqual(await bench.accessibilityFaults(), []);
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

test("on the phone the table scrolls by itself, not the page", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  await bench.quenchCells.first().waitFor();
  assert.ok((await bench.overflow()) <= 0);
  bench.assertNoTrouble();
  await bench.close();
});
