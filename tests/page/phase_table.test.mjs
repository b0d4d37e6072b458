// The phase map as a table, for those who cannot see the chart.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, launch } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

test("the table tells which phases are stable and how much of each, on the chosen scale", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openPhaseTable();
  const [stable, soaked] = await bench.phaseTables();
  assert.match(stable.caption, /^Stable phases with \d\.\d\d % carbon$/);
  assert.match(stable.rows[0][0], /^600 °C to \d{3} °C$/);
  assert.match(stable.rows[0][1], /^ferrite, cementite/);
  assert.match(stable.rows.at(-1)[0], /to 1200 °C$/);
  assert.equal(stable.rows.at(-1)[1], "austenite");
  // each row goes on where the one before ends
  for (let i = 1; i < stable.rows.length; i += 1) {
    assert.equal(stable.rows[i][0].split(" to ")[0], stable.rows[i - 1][0].split(" to ")[1]);
  }
  assert.match(soaked.caption, /^In the end at \d+ °C$/);
  const shares = soaked.rows.map(([, share]) => Number.parseFloat(share));
  const sum = shares.reduce((a, b) => a + b, 0);
  assert.ok(Math.abs(sum - 100) < 1, `${sum}`);
  await bench.pick("Temperatures", "°F");
  const [inFahrenheit] = await bench.until(
    () => bench.phaseTables(),
    ([first]) => first?.rows[0]?.[0].includes("°F"),
    "the table is in °F",
  );
  assert.match(inFahrenheit.rows[0][0], /^1112 °F to \d{4} °F$/);
  bench.assertNoTrouble();
  await bench.close();
});

test("the table opens by keys and has headings for its rows and columns", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.phaseTable.locator("summary").focus();
  await bench.page.keyboard.press("Enter");
  await bench.shows(() => bench.phaseTable.locator("table").count(), 2, "tables");
  assert.ok((await bench.phaseTable.locator("th[scope=row]").count()) >= 4);
  assert.equal(await bench.phaseTable.locator("th[scope=col]").count(), 4);
  bench.assertNoTrouble();
  await bench.close();
});
