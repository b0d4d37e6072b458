// A newcomer's path: from the first load to a verdict for a steel of their own, counted in clicks and keys.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, launch, plain } from "./bench_page.mjs";

/** What the path may take at most; a minute holds twice as much. */
const MOST_CLICKS = 2;
const MOST_KEYS = 40;
/** A steel that is in no list: plain, with a little vanadium. */
const MINE = { C: "0.88", Mn: "0.42", Si: "0.2", Cr: "0.3", V: "0.12" };

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

test("a verdict for one's own steel is two clicks and the typing of its contents away", async () => {
  const begun_ms = Date.now();
  const bench = await BenchPage.ready(browser);
  const { page } = bench;
  const before = plain(await bench.sentenceList.first().textContent());
  let clicks = 0;
  let keys = 0;
  const click = async (target) => {
    await target.click();
    clicks += 1;
  };
  const press = async (key) => {
    await page.keyboard.press(key);
    keys += 1;
  };
  await click(bench.word("The steel"));
  await click(page.getByText("Contents from a certificate"));
  await press("Tab");
  const left = new Set(Object.keys(MINE));
  // The fields follow each other, each with its content picked to be typed over.
  while (left.size > 0) {
    const here = plain(await page.evaluate(() => document.activeElement.labels?.[0]?.textContent ?? ""));
    const [element] = here.split(/\s/);
    if (left.delete(element)) for (const letter of MINE[element]) await press(letter);
    await press(left.size > 0 ? "Tab" : "Enter");
    assert.ok(keys <= MOST_KEYS, `${keys} keys and still without ${[...left].join()}`);
  }
  const { composition } = await bench.savedRoute((route) => route.composition.v === Number(MINE.V));
  for (const [element, text] of Object.entries(MINE)) assert.equal(composition[element.toLowerCase()], Number(text), element);
  await bench.until(async () => plain(await bench.sentenceList.first().textContent()), (now) => now !== before, "a new verdict");
  assert.match(plain(await bench.sentenceList.first().textContent()), /of the 0\.88 % carbon/);
  console.log(`${clicks} clicks and ${keys} keys, ${Date.now() - begun_ms} ms with loading`);
  assert.ok(clicks <= MOST_CLICKS, `${clicks} clicks`);
  bench.assertNoTrouble();
  await bench.close();
});
