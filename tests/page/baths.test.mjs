// The stir of a bath, a second bath, other sections, and the quench in slow motion.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, PHONE, benchOf, exampleOf, launch, plain } from "./bench_page.mjs";

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

/** Quenchants that cannot be stirred, one of each kind. */
const NOT_STIRRED = ["salt200_still", "plate_Al_foil", "N2_2bar", "air_still"];

/** The word of the stir, and what its panel has: the label of its field and what stands below. */
async function stirOf(bench) {
  const word = plain(await bench.word("Agitation").textContent()).replace(/,$/, "");
  const panel = await bench.openWord("Agitation");
  const label = plain(await panel.locator("label").innerText());
  const hint = plain(await panel.locator(".hint").innerText());
  await bench.page.keyboard.press("Escape");
  return { word, label, hint };
}

test("what cannot be stirred drops the stir and is set beside its curve; oil can be stirred again", async () => {
  const bench = await BenchPage.ready(browser);
  const stirred = (name, factor) => bench.savedRoute(({ quench }) => quench.medium === name && quench.agitation === factor);
  for (const name of NOT_STIRRED) {
    await bench.takeQuenchant("oil_medium");
    await bench.openWord("Agitation");
    await bench.type("1.35", "Heat transfer beside the still bath");
    await bench.page.keyboard.press("Escape");
    await stirred("oil_medium", 1.35);
    const oil = await stirOf(bench);
    assert.equal(oil.word, "moderate stir");
    assert.match(oil.hint, /^1 is still, .* 1\.35 moderate/);
    // From oil to oil it stays.
    await bench.takeQuenchant("oil_fast");
    await stirred("oil_fast", 1.35);
    await bench.takeQuenchant(name);
    await stirred(name, 1);
    const { word, label, hint } = await stirOf(bench);
    assert.deepEqual([word, label], ["as its curve", "Heat transfer beside its curve"], name);
    assert.doesNotMatch(hint, /still|stir/, name);
    await bench.takeQuenchant("oil_medium");
    await stirred("oil_medium", 1);
    assert.deepEqual(await stirOf(bench), { ...oil, word: "still" }, `oil after ${name}`);
  }
  bench.assertNoTrouble();
  await bench.close();
});

test("the stir of a second bath is dropped for what cannot be stirred, and is back by Undo", async () => {
  // The page has no field for it: it comes with a route.
  const example = await exampleOf(browser);
  const then = [{ leave: { at_c: 400 }, medium: "oil_fast", agitation: 1.6 }];
  const route = { ...example, quench: { ...example.quench, then } };
  const bench = await BenchPage.ready(browser, { kept: { [KEYS.bench]: benchOf(route) } });
  const take = async (name, factor) => {
    await bench.openWord("Second bath");
    await bench.option(name).click();
    await bench.page.keyboard.press("Escape");
    const { quench } = await bench.savedRoute(({ quench }) => quench.then[0].medium === name);
    assert.deepEqual(quench.then, [{ leave: { at_c: 400 }, medium: name, agitation: factor }]);
    assert.equal(quench.agitation, example.quench.agitation, "that of the first bath stays");
  };
  await take("oil_slow", 1.6);
  for (const name of ["plate_Al_foil", "N2_2bar", "air_still"]) {
    await take(name, 1);
    await bench.page.keyboard.press("Control+z");
    await bench.savedRoute(({ quench }) => quench.then[0].medium === "oil_slow" && quench.then[0].agitation === 1.6);
  }
  await take("air_still", 1);
  await take("oil_slow", 1);
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
