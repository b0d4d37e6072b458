// A snap temper before the cold: a step of the route like any other.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const told = async (bench) => (await bench.sentences()).map(plain).find((text) => /cold bath/.test(text)) ?? "";

test("a snap temper is added before the cold, told, kept, undone and taken out", async () => {
  const bench = await BenchPage.ready(browser);
  assert.doesNotMatch(await told(bench), /snap/);
  await bench.openWord("Cold treatment");
  await bench.pick("Snap temper", "snap temper first");
  const first = await bench.savedRoute((route) => route.cold?.snap);
  assert.deepEqual(first.cold.snap, { temperature_c: 150, time_min: 60 });
  await bench.type("230 °C", "Snap temper at");
  await bench.wrong.waitFor();
  await bench.type("320 °F", "Snap temper at");
  await bench.type("45 min", "Time of the snap temper");
  await bench.savedRoute((route) => route.cold?.snap?.temperature_c === 160 && route.cold.snap.time_min === 45);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  await bench.page.keyboard.press("Escape");
  await bench.page.keyboard.press("Control+z");
  await bench.savedRoute((route) => route.cold?.snap?.time_min !== 45);
  await bench.page.keyboard.press("Control+Shift+z");
  await bench.savedRoute((route) => route.cold?.snap?.time_min === 45);
  await bench.reload();
  assert.match(plain(await bench.word("Cold treatment").textContent()), /^snap temper 160 °C, −75 °C$/);
  assert.match(await told(bench), /Without the snap temper [\d.]+ % would be left/);
  assert.equal(await bench.block(/^Snap temper/).count(), 1);
  await bench.block(/^Snap temper/).press("Delete");
  const without = await bench.savedRoute((route) => !route.cold?.snap);
  assert.equal(without.cold.temperature_c, -75);
  bench.assertNoTrouble();
  await bench.close();
});

test("what stands behind the cold names the snap temper and how far it is known", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Cold treatment");
  await bench.pick("Snap temper", "snap temper first");
  await bench.savedRoute((route) => route.cold?.snap);
  await bench.page.keyboard.press("Escape");
  await bench.page.locator(".say", { hasText: "snap temper" }).getByRole("button").last().click();
  await bench.until(() => bench.opened.textContent(), (text) => /stabilises as a long wait/.test(plain(text)), "the snap temper explained");
  bench.assertNoTrouble();
  await bench.close();
});

test("the card has a row for the snap temper, and the phone its control", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true });
  await bench.page.getByRole("tab", { name: /Quench/ }).tap();
  await bench.word("Cold treatment").tap();
  await bench.panel.waitFor();
  await bench.pick("Snap temper", "snap temper first");
  await bench.savedRoute((route) => route.cold?.snap);
  assert.ok((await bench.overflow()) <= 0);
  await bench.page.keyboard.press("Escape");
  await bench.toCard();
  const steps = await bench.cardSteps();
  const quench = steps.indexOf("Quench");
  assert.deepEqual(steps.slice(quench, quench + 4), ["Quench", "Test", "Snap temper", "Cold"]);
  assert.ok((await bench.overflow()) <= 0);
  bench.assertNoTrouble();
  await bench.close();
});
