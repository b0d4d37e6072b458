// The same page in two tabs: what is done in one is not written over by the other, whichever comes first,
// and where both have changed the same the user is told in one line.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, asideOf, exampleOf, launch } from "./bench_page.mjs";

let browser;
/** The route that the page opens with, as it is saved. */
let example;
before(async () => {
  browser = await launch();
  example = await exampleOf(browser);
});
after(() => browser.close());

const shelfOf = (version, ...names) =>
  JSON.stringify({ format: "recalesce", version, kind: "shelf", routes: names.map((name, index) => ({ id: index + 1, name, route: example })) });

/** Two tabs at a shelf with routes of these names. `before` prepares each before it loads. */
async function twoTabs(names, before = async () => {}) {
  const bench = await BenchPage.ready(browser, { kept: { [KEYS.shelf]: shelfOf(1, ...names) }, before });
  const other = await bench.tab(before);
  for (const tab of [bench, other]) await tab.go("Shelf");
  for (const tab of [bench, other]) await tab.shows(async () => (await tab.names()).length, names.length);
  return [bench, other];
}

/** Waits until both tabs and the store have routes of these names, in whatever order. */
async function haveAll(tabs, names) {
  const wanted = JSON.stringify([...names].sort());
  for (const tab of tabs) await tab.shows(async () => JSON.stringify((await tab.names()).sort()), wanted);
  await tabs[0].untilStored(KEYS.shelf, (text) => JSON.stringify(JSON.parse(text).routes.map(({ name }) => name).sort()) === wanted);
}

/** As a tab that is not told of others in time: what they write is seen only when this one writes. */
const deaf = (page) => page.addInitScript(() => addEventListener("storage", (event) => event.stopImmediatePropagation(), true));

test("what two tabs change in the same moment is all there, in both and in the store", async () => {
  const [bench, other] = await twoTabs(["one", "two", "three"]);
  await Promise.all([bench.rename(0, "first"), other.shelfButton(1, "Duplicate").click()]);
  await haveAll([bench, other], ["first", "two", "two (2)", "three"]);
  await Promise.all([bench.shelfButton(3, "Take off").click(), other.rename(1, "second")]);
  await haveAll([bench, other], ["first", "second", "two (2)"]);
  await Promise.all([bench.keep(), other.shelfButton(0, "Move down").click()]);
  await haveAll([bench, other], ["first", "second", "two (2)", "marking knife, 52100"]);
  assert.equal(await bench.stored(asideOf(KEYS.shelf)), null);
  for (const tab of [bench, other]) tab.assertNoTrouble();
  await bench.close();
});

test("a tab that has not heard of the other reads before it writes", async () => {
  const [bench, other] = await twoTabs(["one", "two"], deaf);
  await bench.rename(0, "first");
  await bench.untilStored(KEYS.shelf, (text) => text.includes("first"));
  await other.shelfButton(1, "Duplicate").click();
  await haveAll([other], ["first", "two", "two (2)"]);
  await bench.shelfButton(1, "Take off").click();
  await haveAll([bench], ["first", "two (2)"]);
  // Also when it is left at once.
  await other.rename(0, "chisel");
  await other.page.close();
  await bench.untilStored(KEYS.shelf, (text) => text.includes("chisel") && text.includes("two (2)"));
  await bench.close();
});

test("a route that both have changed is kept twice, and told in one line", async () => {
  const [bench, other] = await twoTabs(["one", "two"], deaf);
  await bench.rename(0, "mine");
  await bench.untilStored(KEYS.shelf, (text) => text.includes("mine"));
  await other.rename(0, "yours");
  await haveAll([other], ["mine", "yours", "two"]);
  assert.match(await other.message(), /^Two windows have changed the same route of the shelf\. It is kept as both left it; the other is “(mine|yours)”\.$/);
  assert.equal(await other.messages.count(), 1);
  other.assertNoTrouble();
  await bench.close();
});

test("a shelf that another version has written stays as it is, and that is told", async () => {
  const [bench, other] = await twoTabs(["one"]);
  const newer = shelfOf(99, "of a later version");
  await other.page.evaluate(([key, text]) => localStorage.setItem(key, text), [KEYS.shelf, newer]);
  assert.match(await bench.message(), /cannot be read whole here\. It stays as it is/);
  await bench.shelfButton(0, "Duplicate").click();
  await bench.shows(async () => (await bench.names()).length, 2);
  await bench.page.waitForTimeout(600);
  assert.equal(await bench.stored(KEYS.shelf), newer);
  await bench.close();
});

test("what two tabs do one right after the other comes to rest", async () => {
  for (const between_ms of [0, 400]) {
    const [bench, other] = await twoTabs(["one", "two"]);
    for (const tab of [bench, other]) {
      await tab.page.evaluate((key) => {
        window.writes = 0;
        addEventListener("storage", (event) => (window.writes += event.key === key));
      }, KEYS.shelf);
    }
    const second = other.page.waitForTimeout(between_ms).then(() => other.keep());
    await Promise.all([bench.shelfButton(1, "Duplicate").click(), second]);
    const kept = ["two (2)", "marking knife, 52100"];
    await haveAll([bench, other], ["one", "two", ...kept]);
    await bench.shelfButton(0, "Take off").click();
    await other.shows(async () => (await other.names())[0], "two");
    await other.rename(0, "second");
    const names = ["second", ...kept];
    await haveAll([bench, other], names);
    await bench.page.waitForTimeout(1500);
    await haveAll([bench, other], names);
    for (const tab of [bench, other]) {
      assert.ok((await tab.page.evaluate(() => window.writes)) < 12, "writing ends");
      tab.assertNoTrouble();
    }
    await bench.close();
  }
});

test("each tab has its own route on the bench again after a reload, and a new one the last", async () => {
  const bench = await BenchPage.ready(browser);
  const other = await bench.tab();
  await bench.press("soak", "PageUp");
  await bench.savedRoute(({ soak }) => soak.temperature_c === 840);
  await other.press("soak", "PageDown");
  await other.savedRoute(({ soak }) => soak.temperature_c === 820);
  for (const [tab, soak] of [[bench, 840], [other, 820], [await bench.tab(), 820]]) {
    await tab.reload();
    assert.equal(await tab.valueOf("soak"), soak);
    tab.assertNoTrouble();
  }
  await bench.close();
});

test("the shop that one tab changes the other takes over, and neither writes an older one over it", async () => {
  const bench = await BenchPage.ready(browser);
  const other = await bench.tab();
  for (const tab of [bench, other]) {
    await tab.go("Decide");
    await tab.page.getByText("The shop", { exact: true }).click();
  }
  const hottest = (tab) => tab.page.locator(".owned").first().getByRole("textbox", { name: "to", exact: true });
  await hottest(bench).fill("950 °C");
  await hottest(bench).press("Enter");
  await other.until(() => hottest(other).inputValue(), (text) => text.startsWith("950"), "the other's shop");
  await other.button("Remove this cold bath").click();
  const text = await bench.untilStored(KEYS.shop, (text) => JSON.parse(text).shop.colds.length === 0);
  assert.equal(JSON.parse(text).shop.furnaces[0].most_c, 950);
  await bench.until(() => bench.button("Remove this cold bath").count(), (count) => count === 0, "the cold bath is gone here too");
  for (const tab of [bench, other]) tab.assertNoTrouble();
  await bench.close();
});

test("experiments that two tabs take in are both kept", async () => {
  const bench = await BenchPage.ready(browser);
  const other = await bench.tab();
  const step = { change: { task: "Hotter.", until: [{ number: "soak_c", least: 850 }], way: { soak: { temperature_c: 860 } } } };
  const titles = ["from one", "from the other"];
  for (const tab of [bench, other]) await tab.go("Experiments");
  for (const [index, tab] of [bench, other].entries()) {
    const mine = { title: titles[index], about: "A.", minutes: 5, route: example, steps: [step], at_the_forge: "Sparks." };
    await tab.page.getByText("Paste a link or the text of an experiment").click();
    await tab.page.getByRole("textbox", { name: "Link or text of an experiment" }).fill(JSON.stringify(mine));
    await tab.button("Take what is pasted").click();
    await tab.page.getByRole("button", { name: `Start: ${titles[index]}` }).waitFor();
  }
  await bench.reload();
  await bench.go("Experiments");
  for (const title of titles) await bench.page.getByRole("button", { name: `Start: ${title}`, exact: true }).waitFor();
  await bench.close();
});
