// How deep a steel hardens, and what a route means in use: parts of the page that open.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, launch, plain } from "./bench_page.mjs";

const COOLINGS = "What forms at other rates of cooling";
const BAR = "How deep it hardens: the end-quench bar";
const IN_USE = "What it means in use";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** Rows of the table of coolings: rate, constituents, hardness. */
const rows = (part) =>
  part.locator("tbody tr").evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent))).then((all) => all.map((row) => row.map(plain)));

/** Waits for the words of the chart of a part: it is drawn after the text beside it stands. */
function chartSays(bench, part, words) {
  const label = async () => plain(await part.locator("canvas").getAttribute("aria-label"));
  return bench.until(label, (text) => words.test(text), `${words}`);
}

test("the fan of coolings falls from martensite to soft, and its chart has words", async () => {
  const bench = await BenchPage.ready(browser);
  const part = await bench.openPart(COOLINGS);
  const table = await bench.until(() => rows(part), (found) => found.length > 8, "rows of the fan");
  assert.match(table[0][0], /^1000 K\/s$/);
  assert.match(table[0][1], /^martensite 8\d %/);
  assert.match(table.at(-1)[1], /pearlite 9\d %$/);
  const hardness = table.map(([, , hrc]) => Number.parseFloat(hrc));
  assert.ok(hardness[0] - hardness.at(-1) > 30, `${hardness}`);
  await chartSays(bench, part, /by the rate at 700 °C.*1000 K\/s: 6\d/);
  assert.match(plain(await part.locator(".hint").innerText()), /K\/s for 99 %.*for 50 %/);
  await bench.pick("Temperatures", "°F");
  await chartSays(bench, part, /by the rate at 1292 °F.*1800 °F\/s: 6\d/);
  const inFahrenheit = plain(await part.innerText());
  assert.match(inFahrenheit, /At 1292 °F/);
  assert.match(inFahrenheit, /1800 °F\/s/);
  assert.doesNotMatch(inFahrenheit, /K\/s|700 °C/);
  bench.assertNoTrouble();
  await bench.close();
});

test("the fan follows the soak, and says so where a steel has none", async () => {
  const bench = await BenchPage.ready(browser);
  const part = await bench.openPart(COOLINGS);
  const before = await bench.until(() => part.locator(".hint").innerText(), Boolean, "critical rates");
  await bench.press("soak", "PageUp", "PageUp");
  await bench.until(() => part.locator(".hint").innerText(), (now) => now !== before, "other critical rates");
  await bench.takeGrade("D2");
  await bench.shows(() => part.locator(".nothing").innerText(), "Not known for this steel.");
  bench.assertNoTrouble();
  await bench.close();
});

test("the end-quench bar tells DI and rounds, in inches as well", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.takeGrade("4140");
  const part = await bench.openPart(BAR);
  const words = async () => plain(await part.locator(".hint").innerText());
  const metric = await bench.until(words, (text) => /DI [\d.]+ mm, by the factors of ASTM A255/.test(text), "DI in mm");
  assert.match(metric, /mm in oil, still \(H 0\.28\).*mm in brine, violent \(H 5\.00\)/);
  await chartSays(bench, part, /^Hardness along the end-quenched bar: 5\d HRC at/);
  await bench.pick("Lengths", "in");
  await bench.until(words, (text) => /DI [\d.]+ in,/.test(text), "DI in inches");
  bench.assertNoTrouble();
  await bench.close();
});

test("in use: as the handbook at first, then with reasons against a route of the shelf", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.keep();
  const part = await bench.openPart(IN_USE);
  const lines = () => part.locator("dt").allInnerTexts();
  await bench.until(lines, (found) => found.length === 3, "three lines");
  await part.locator("select").selectOption({ index: 1 });
  await bench.until(lines, (found) => found.every((line) => line.endsWith("no difference that counts")), "the same route differs in nothing");
  await bench.press("temper", "PageDown", "PageDown", "PageDown");
  const changed = await bench.until(lines, (found) => /better$/.test(found[0]), "harder wears less");
  assert.match(changed[2], /Toughness: worse$/);
  assert.match(plain(await part.locator("dd li").first().innerText()), /^\+ hardness [\d.]+ HRC, there [\d.]+ HRC$/);
  bench.assertNoTrouble();
  await bench.close();
});

test("opened parts keep to the width of a phone", async () => {
  const bench = await BenchPage.ready(browser, { viewport: { width: 360, height: 740 } });
  await bench.block(/^Quench/).click();
  await bench.openPart(COOLINGS);
  await bench.openPart(BAR);
  await bench.openPart(IN_USE);
  assert.ok((await bench.overflow()) <= 0);
  bench.assertNoTrouble();
  await bench.close();
});

test("a heat's own end-quench test is read, shifts the verdict and is there after a reload", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.takeGrade("4140");
  const part = await bench.openPart(BAR);
  const words = async () => plain(await part.locator(".hint").innerText());
  const before = await bench.until(words, Boolean, "DI");
  await part.locator("textarea").fill("J1 57\nJ4 49\nJ8 38\nJ16 30 HRC\n1 1/2 in 26");
  const after = await bench.until(words, (text) => /by your own test of the heat/.test(text), "DI of the test");
  assert.match(after, /It begins to transform after 0\.\d\d times the time/);
  assert.notEqual(before, after);
  await part.locator("textarea").fill("J1 57\nsoft 49");
  await bench.until(async () => plain(await part.locator(".wrong").innerText()), (text) => /^line 2: /.test(text), "the line");
  assert.equal(await words(), after, "what made sense last stays");
  await part.locator("textarea").fill("J1 57\nJ2 57\nJ3 57");
  await bench.until(async () => plain(await part.locator(".wrong").innerText()), (text) => /where the hardness falls off/.test(text), "no fall");
  await part.locator("textarea").fill("J1 57\nJ4 49\nJ8 38\nJ16 30");
  await bench.untilStored(KEYS.bench, (text) => /end_quench/.test(text ?? ""));
  await bench.reload();
  const again = await bench.openPart(BAR);
  assert.equal((await again.locator("textarea").inputValue()).split("\n").length, 4);
  bench.assertNoTrouble();
  await bench.close();
});

test("in slow motion the deciding place tells its rate, what has formed and what it would become", async () => {
  const bench = await BenchPage.ready(browser);
  const part = await bench.openPart("The quench in slow motion");
  const told = async () => plain(await part.locator(".then").innerText());
  const slider = part.locator("input[type=range]");
  await slider.focus();
  await bench.page.keyboard.press("Home");
  await bench.until(told, (text) => /^At the \S.*: \d+ °C as it leaves the furnace; so far austenite 97 %, carbide 3\.\d %\. Quenched out at once from here: 6\d\.\d HRC\.$/.test(text), "austenite at first");
  await bench.page.keyboard.press("End");
  await bench.until(told, (text) => /so far martensite 8\d %/.test(text), "martensite in the end");
  bench.assertNoTrouble();
  await bench.close();
});
