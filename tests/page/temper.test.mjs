// From the target back to the temper.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

test("what meets the target is named, and a press takes it", async () => {
  const bench = await BenchPage.ready(browser);
  for (let i = 0; i < 4; i += 1) await bench.press("temper", "PageUp");
  const ways = bench.page.locator(".target-ways");
  const words = await bench.until(async () => plain(await ways.innerText()), (text) => /^The middle of the target, 62\.0 HRC/.test(text), "ways to the target");
  const [, wanted] = /comes with (\d+) °C/.exec(words);
  await ways.getByRole("button").first().click();
  await bench.until(() => bench.valueOf("temper"), (c) => Math.abs(c - Number(wanted)) <= 1, "the temper that was named");
  await bench.until(async () => (await bench.sentences()).at(-1), (text) => /62\.\d HRC/.test(plain(text)), "the target is met");
  bench.assertNoTrouble();
  await bench.close();
});

test("the time that meets the target at the planned temperature", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.press("temper", "PageUp");
  const ways = bench.page.locator(".target-ways");
  const time = ways.getByRole("button").last();
  await bench.until(async () => plain(await ways.innerText()), (text) => /each at \d+ °C\.$/.test(text), "a time");
  await time.click();
  await bench.until(async () => (await bench.sentences()).at(-1), (text) => /6[12]\.\d HRC/.test(plain(text)), "the target is met");
  bench.assertNoTrouble();
  await bench.close();
});

test("above its target a route without a temper is told of one, and one with a temper of a hotter one", async () => {
  const bench = await BenchPage.ready(browser);
  const last = async () => (await bench.sentences()).at(-1);
  const tempers = async (count) => {
    await bench.openWord("Number of tempers");
    await bench.type(String(count), "How many tempers");
    await bench.page.keyboard.press("Escape");
    await bench.savedRoute((route) => route.tempers.length === count);
  };
  await tempers(0);
  const { target } = await bench.savedRoute();
  const [, hrc, verdict] = /: ([\d.]+) HRC, nine times in ten between [\d.]+ and [\d.]+\. (.*)$/.exec(await last());
  assert.ok(Number(hrc) > target.most_hrc, `${hrc} HRC`);
  assert.equal(verdict, "Above the target: a temper brings it down.");
  await tempers(1);
  assert.match(await last(), /^After the temper: /);
  assert.doesNotMatch(await last(), /: a temper brings it down/);
  await bench.press("temper", "Home");
  await bench.until(last, (text) => /^After the temper: .* Above the target: a hotter temper brings it down\.$/.test(text), "too cold a temper");
  bench.assertNoTrouble();
  await bench.close();
});
