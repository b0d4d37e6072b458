// A second bath, other sections, and the quench in slow motion.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

test("a second bath is chosen, told in the sentence, kept, and taken away again", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Second bath");
  await bench.pick("When it goes there", "by temperature");
  await bench.type("230 °C", "Out when the core is at");
  await bench.option("air_still").click();
  const saved = await bench.savedRoute((route) => route.quench.then?.[0]?.leave.at_c === 230);
  assert.deepEqual(saved.quench.then, [{ leave: { at_c: 230 }, medium: "air_still", agitation: 1 }]);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  await bench.page.keyboard.press("Escape");
  await bench.reload();
  assert.match(plain(await bench.word("Second bath").textContent()), /^at 230 °C into still air/);
  await bench.openWord("Second bath");
  await bench.pick("When it goes there", "by time");
  await bench.type("-4 s", "Time in the first bath");
  await bench.wrong.waitFor();
  await bench.type("4 s", "Time in the first bath");
  await bench.savedRoute((route) => route.quench.then?.[0]?.leave.after_s === 4);
  await bench.pick("When it goes there", "none");
  await bench.savedRoute((route) => route.quench.then === undefined);
  bench.assertNoTrouble();
  await bench.close();
});

test("a square bar and a convex blade are computed and drawn", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Section");
  await bench.pick("Flanks", "convex");
  const convex = await bench.savedRoute((route) => route.section.grind === "convex");
  assert.equal(convex.section.shape, "blade");
  await bench.pick("Shape", "square");
  await bench.type("8 mm", "Side");
  const square = await bench.savedRoute((route) => route.section.side_mm === 8);
  assert.equal(square.section.shape, "square");
  await bench.until(() => bench.sentences(), (told) => told.some((text) => /At the centre/.test(plain(text))), "the verdict is of the centre");
  bench.assertNoTrouble();
  await bench.close();
});

test("the quench is played in slow motion, stopped, and moved by key", async () => {
  const bench = await BenchPage.ready(browser);
  const slider = bench.page.getByRole("slider", { name: "Time since leaving the furnace" });
  await bench.page.getByText("The quench in slow motion").click();
  await slider.waitFor();
  const value = async () => Number(await slider.inputValue());
  const begun = await value();
  await bench.page.getByRole("button", { name: "Play" }).click();
  await bench.until(value, (now) => now > begun + 5, "it plays");
  await bench.page.getByRole("button", { name: "Stop" }).click();
  const stopped = await value();
  await slider.press("ArrowLeft");
  await bench.until(value, (now) => now < stopped, "a key moves it");
  const told = await bench.page.locator(".replay-view canvas").getAttribute("aria-label");
  assert.match(plain(told), /: from −?\d+ °C to \d+ °C\.$/);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("whoever wants no motion moves the quench by hand", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, reducedMotion: "reduce" });
  await bench.page.getByRole("tab", { name: /Quench/ }).click();
  await bench.page.getByText("The quench in slow motion").click();
  await bench.page.getByRole("slider", { name: "Time since leaving the furnace" }).waitFor();
  assert.equal(await bench.page.getByRole("button", { name: "Play" }).count(), 0);
  assert.ok((await bench.overflow()) <= 0);
  bench.assertNoTrouble();
  await bench.close();
});
