// A place on the cooling curve: by mouse, by finger and by key.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const slider = (bench) => bench.page.getByRole("slider", { name: "Place on the cooling curve" });
const line = async (bench) => plain(await bench.page.locator(".hint.along").textContent());
const WORDS = /^[\d.]+ (s|min)\. At the [a-z -]+: \d+ °C, falling by [\d.]+ K\/s; so far .*austenite \d+ %.*\. Quenched out at once from here: [\d.]+ HRC\.$/;

/** The middle of the ring in the window, CSS pixels. */
async function ringOf(bench) {
  const { x, y, width, height } = await bench.page.locator(".along-at").boundingBox();
  return [x + width / 2, y + height / 2];
}

test("the line tells time, temperature, rate, structure and hardness, in the units chosen", async () => {
  const bench = await BenchPage.ready(browser);
  assert.match(await line(bench), WORDS);
  await bench.pick("Temperatures", "°F");
  await bench.until(() => line(bench), (text) => /\d+ °F, falling by [\d.]+ °F\/s;/.test(text), "the rate in °F/s");
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("keys move the place, and each place says where it is", async () => {
  const bench = await BenchPage.ready(browser);
  const [before] = await ringOf(bench);
  const was = await line(bench);
  await slider(bench).press("Home");
  await bench.until(() => line(bench), (text) => /: 830 °C/.test(text), "the start of the curve");
  await slider(bench).press("End");
  await bench.until(() => line(bench), (text) => /martensite 8\d %|martensite 9\d %/.test(text), "the end of the curve");
  const [end] = await ringOf(bench);
  assert.ok(end > before);
  assert.notEqual(await line(bench), was);
  assert.match(plain(await slider(bench).getAttribute("aria-valuetext")), /: \d+ °C, hardly cooling$/);
  bench.assertNoTrouble();
  await bench.close();
});

test("the mouse points along the curve, and not beside it or with a handle held", async () => {
  const bench = await BenchPage.ready(browser);
  await slider(bench).press("Home");
  await slider(bench).fill("200");
  const [x, y] = await ringOf(bench);
  await slider(bench).press("Home");
  await bench.until(() => line(bench), (text) => /: 830 °C/.test(text), "the start of the curve");
  await bench.page.mouse.move(x + 200, y - 150);
  assert.match(await line(bench), /: 830 °C/);
  await bench.page.mouse.move(x + 3, y - 2);
  const pointed = await bench.until(() => line(bench), (text) => !/: 830 °C/.test(text), "the place pointed at");
  assert.match(pointed, WORDS);
  const ring = await ringOf(bench);
  assert.ok(Math.hypot(ring[0] - x, ring[1] - y) < 8, `${ring} is not near ${[x, y]}`);
  // Its way to the handle may point at the curve; a handle that is held does not.
  const [left, top] = await bench.placeOf("quench");
  await bench.page.mouse.move(left, top);
  await bench.page.mouse.down();
  const position = await slider(bench).inputValue();
  await bench.page.mouse.move(left - 40, top + 30, { steps: 6 });
  await bench.page.mouse.up();
  assert.equal(await slider(bench).inputValue(), position);
  bench.assertNoTrouble();
  await bench.close();
});

test("the slider stands below the ring, and the section opens at the same time", async () => {
  const bench = await BenchPage.ready(browser);
  for (const position of ["40", "160", "300"]) {
    await slider(bench).fill(position);
    const [x] = await ringOf(bench);
    const box = await slider(bench).boundingBox();
    const thumb = box.x + 8 + ((box.width - 16) * Number(position)) / 400;
    assert.ok(Math.abs(thumb - x) < 2, `${thumb} is not below ${x}`);
  }
  const across = async () => plain(await bench.page.locator(".hint.across").textContent());
  assert.match(await across(), /^Across the section: cutting edge \d+ °C, .*spine core \d+ °C, surface \d+ °C\.$/);
  await bench.openPart("The quench in slow motion");
  const other = bench.page.getByRole("slider", { name: "Time since leaving the furnace" });
  await other.waitFor();
  assert.equal(await other.inputValue(), "300");
  await slider(bench).fill("120");
  await bench.shows(() => other.inputValue(), "120");
  const picture = bench.page.locator(".replay-view canvas");
  const time = /^([\d.]+ s)/.exec(plain(await line(bench)).replace(/\. At.*/, ""))[1];
  await bench.until(async () => plain(await picture.getAttribute("aria-label")), (told) => told.startsWith(`${time}:`), "the section at that time");
  bench.assertNoTrouble();
  await bench.close();
});

test("a finger taps a place on the curve", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true });
  await bench.page.getByRole("tab", { name: /Quench/ }).tap();
  await slider(bench).press("Home");
  await slider(bench).fill("200");
  const [x, y] = await ringOf(bench);
  await slider(bench).press("Home");
  await bench.until(() => line(bench), (text) => /: 830 °C/.test(text), "the start of the curve");
  await bench.page.touchscreen.tap(x, y);
  await bench.until(() => line(bench), (text) => !/: 830 °C/.test(text), "the place tapped");
  assert.ok((await bench.overflow()) <= 0);
  bench.assertNoTrouble();
  await bench.close();
});

test("a bath at another temperature is typed, told and kept; too hot a one is refused", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Quenchant");
  await bench.type("120 °C", "Temperature of the bath");
  await bench.wrong.waitFor();
  await bench.type("70 °C", "Temperature of the bath");
  const saved = await bench.savedRoute((route) => route.quench.medium.bath_c === 70);
  assert.deepEqual(saved.quench.medium, { listed: "oil_medium", bath_c: 70 });
  assert.deepEqual(await bench.accessibilityFaults(), []);
  await bench.page.keyboard.press("Escape");
  await bench.reload();
  assert.equal(plain(await bench.word("Quenchant").textContent()), "medium oil, 70 °C");
  await bench.toCard();
  assert.match(plain(await bench.card.textContent()), /medium oil, 70 °C/);
  await bench.go("Bench");
  // Back at the listed temperature it is the listed quenchant.
  await bench.openWord("Quenchant");
  await bench.type("50 °C", "Temperature of the bath");
  await bench.savedRoute((route) => route.quench.medium === "oil_medium");
  await bench.type("60 °C", "Temperature of the bath");
  await bench.savedRoute((route) => route.quench.medium.bath_c === 60);
  await bench.option("water20").click();
  await bench.savedRoute((route) => route.quench.medium === "water20");
  bench.assertNoTrouble();
  await bench.close();
});

test("the second bath has a temperature of its own, and the change stands on the curve", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Second bath");
  await bench.pick("When it goes there", "by time");
  await bench.option("oil_fast").click();
  await bench.type("65 °C", "Temperature of the bath");
  const saved = await bench.savedRoute((route) => route.quench.then?.[0]?.medium.bath_c === 65);
  assert.deepEqual(saved.quench.then[0].medium, { listed: "oil_fast", bath_c: 65 });
  await bench.page.keyboard.press("Escape");
  assert.match(plain(await bench.word("Second bath").textContent()), /into fast oil, 65 °C$/);
  const chart = bench.page.locator(".plot.tall canvas[aria-label^=Quench]");
  assert.match(plain(await chart.getAttribute("aria-label")), /After [\d.]+ s, at \d+ °C, it goes into fast oil, 65 °C\./);
  bench.assertNoTrouble();
  await bench.close();
});
