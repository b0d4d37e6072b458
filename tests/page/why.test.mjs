// An opened number: its formula, and the way back from it to the composition.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

test("from the final hardness one walks back to the composition, and forth again", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.sentenceList.last().locator("button.number").first().click();
  const title = () => bench.opened.locator("h2").textContent();
  await bench.opened.locator(".goes-in").waitFor();
  assert.equal(await title(), "Hardness at the end");
  assert.ok(await bench.opened.locator(".formula math").count() > 0);
  const steps = [
    [/^Vickers hardness$/, /^Hardness after temper/],
    [/^tempered martensite without austenite$/, /^Tempered martensite/],
    [/^hardness of martensite by its carbon$/, /^Hardness of martensite by its carbon/],
    [/^carbon in solution$/, /^Carbon in solution/],
    [/^carbon of the steel$/, /^Carbon of the steel/],
  ];
  for (const [input, next] of steps) {
    const button = bench.opened.locator(".goes-in").getByRole("button", { name: input });
    // By keyboard, and the focus goes along to the title.
    await button.focus();
    await bench.page.keyboard.press("Enter");
    await bench.until(title, (text) => next.test(text), String(next));
    await bench.until(
      () => bench.page.evaluate(() => document.activeElement?.tagName),
      (tag) => tag === "H2",
      "the focus on the title",
    );
  }
  assert.match(plain(await bench.openedFigure.textContent()), /^1(\.0+)? ?%|^1\.\d+ %/);
  const trail = bench.opened.getByRole("navigation").getByRole("button");
  assert.equal(await trail.count(), steps.length + 1);
  await trail.nth(1).click();
  await bench.until(title, (text) => /^Hardness after temper/.test(text), "back");
  assert.equal(await trail.count(), steps.length + 1);
  await trail.nth(4).click();
  await bench.until(title, (text) => text === "Carbon in solution", "forth");
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("an opened number keeps to the width of a phone, in the dark too", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, colorScheme: "dark" });
  await bench.numbers.last().scrollIntoViewIfNeeded();
  await bench.sentenceList.first().locator("button.number").first().tap();
  await bench.opened.locator(".formula").waitFor();
  const fits = () => bench.opened.evaluate((dialog) => dialog.scrollWidth <= dialog.clientWidth);
  assert.ok(await fits());
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});
