// The dock: four figures at the foot of the window where the outcome is not beside the charts.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, launch } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** The page in a window of a width that has the dock. */
const atDock = () => BenchPage.ready(browser, { viewport: { width: 820, height: 900 } });

test("in the middle the four figures stand in one line at the foot, and over nothing of the bench's end", async () => {
  const bench = await atDock();
  await bench.dock.waitFor();
  await bench.tableOfQuenches.waitFor();
  const lines = await bench.figures.evaluateAll((all) => all.map((one) => Math.round(one.getBoundingClientRect().bottom)));
  assert.equal(lines.length, 4);
  assert.ok(new Set(lines).size === 1 && lines[0] > 850 && lines[0] <= 900, `figures end at ${lines}`);
  await bench.page.evaluate(() => scrollTo(0, document.body.scrollHeight));
  const [end, dock, foot] = await bench.page.evaluate(() =>
    ["main", ".dock", ".foot"].map((part) => document.querySelector(part).getBoundingClientRect()).map(({ top, bottom }) => [top, bottom]),
  );
  assert.ok(end[1] <= dock[0] && dock[1] <= foot[0], `bench to ${end[1]}, dock ${dock}, foot from ${foot[0]}`);
  await bench.page.emulateMedia({ media: "print" });
  assert.equal(await bench.dock.isVisible(), false, "on paper");
  await bench.page.emulateMedia({ media: "screen" });
  await bench.page.setViewportSize({ width: 1200, height: 900 });
  assert.equal(await bench.dock.isVisible(), false, "where the outcome is beside the charts");
  bench.assertNoTrouble();
  await bench.close();
});

test("the dock judges as the sentences do, by ink and sign, and says in a line why there is no number", async () => {
  const bench = await atDock();
  await bench.dock.waitFor();
  const holding = await bench.verdicts();
  assert.deepEqual(holding.docked, holding.said);
  await bench.press("temper", "End");
  await bench.press("quench", "Home");
  const missing = await bench.until(() => bench.verdicts(), ({ said }) => said.every(([sign]) => sign !== holding.said[0][0]), "both are judged otherwise");
  assert.deepEqual(missing.docked, missing.said);
  await bench.press("soak", "Home");
  await bench.refusal.waitFor();
  const why = await bench.refusal.innerText();
  const docked = await bench.dock.innerText();
  assert.ok(why.startsWith(docked) && docked.endsWith(".") && !docked.slice(0, -1).includes(". "), `${docked} of ${why}`);
  bench.assertNoTrouble();
  await bench.close();
});

test("the dock has the hardness of the last sentence where one place is judged", async () => {
  const bench = await atDock();
  const [, told] = /^After two tempers: ([\d.]+) HRC, /.exec((await bench.sentences()).at(-1));
  const [term, hardness] = await bench.dockedHardness();
  assert.equal(term, "hardness");
  assert.equal(hardness.split(" ")[0], told);
  bench.assertNoTrouble();
  await bench.close();
});

test("the dock has the hardness of the cutting edge where the blade stays soft above it", async () => {
  const bench = await atDock();
  await bench.takeGrade("1095");
  await bench.openWord("Section");
  await bench.type("0.5 mm", "Cutting edge as heat treated");
  await bench.type("4 mm", "Spine");
  await bench.type("30 mm", "Height from cutting edge to spine");
  await bench.page.keyboard.press("Escape");
  await bench.takeQuenchant("oil_medium");
  await bench.savedRoute(({ section, quench }) => section.height_mm === 30 && quench.medium === "oil_medium");
  const said = (await bench.sentences()).at(-1);
  const [, soft, edge, most] = /: ([\d.]+) HRC, .* At the cutting edge it has ([\d.]+) HRC, nine times in ten between [\d.]+ and ([\d.]+)\./.exec(said);
  assert.ok(Number(soft) < Number(edge) - 10, said);
  const [term, hardness] = await bench.dockedHardness();
  assert.equal(term, "edge hardness");
  const [figure, band] = hardness.split(" ±");
  assert.equal(figure, edge);
  // Each of the three is rounded by itself.
  assert.ok(Math.abs(Number(most) - Number(edge) - Number(band)) < 0.16, `${hardness} of ${said}`);
  bench.assertNoTrouble();
  await bench.close();
});
