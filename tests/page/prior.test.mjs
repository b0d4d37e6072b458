// The steps before hardening: shown on the strip, opened, changed, moved, undone.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const FIRST = ["Forge", "Normalise", "Refine", "Refine", "Anneal", "Soak", "Quench", "Cold", "Temper 1", "Temper 2"];

const blocks = (bench) => bench.page.locator(".blocks button:not(.add)");
const titles = async (bench) => (await blocks(bench).locator("b").allInnerTexts()).map(plain);
const panel = (bench) => bench.page.locator(".before");
const undo = (bench) => bench.page.locator(".undo button").first();
const redo = (bench) => bench.page.locator(".undo button").last();

async function shows(bench, expected) {
  await bench.shows(async () => (await titles(bench)).join(), expected.join(), "steps of the strip");
}

test("the strip shows the whole route, and a block opens its step", async () => {
  const bench = await BenchPage.ready(browser);
  assert.deepEqual(await titles(bench), FIRST);
  assert.equal(await panel(bench).count(), 0);
  await blocks(bench).nth(1).click();
  const text = plain(await panel(bench).innerText());
  assert.match(text, /normalise at 885 °C for 10 min, then still air/);
  assert.match(text, /carbon goes into solution/);
  assert.match(text, /fine pearlite, about \d+(\.\d)? HRC/);
  const rows = await panel(bench).locator("tbody tr").count();
  assert.equal(rows, 6);
  bench.assertNoTrouble();
  await bench.close();
});

test("a step is moved with the keys and by dragging, duplicated and taken out; each can be undone", async () => {
  const bench = await BenchPage.ready(browser);
  const moved = ["Normalise", "Forge", ...FIRST.slice(2)];
  await blocks(bench).nth(0).focus();
  await bench.page.keyboard.press("Alt+ArrowRight");
  await shows(bench, moved);
  await undo(bench).click();
  await shows(bench, FIRST);
  await redo(bench).click();
  await shows(bench, moved);
  await bench.page.keyboard.press("Control+z");
  await shows(bench, FIRST);

  const from = await blocks(bench).nth(0).boundingBox();
  const to = await blocks(bench).nth(1).boundingBox();
  await bench.page.mouse.move(from.x + 30, from.y + 20);
  await bench.page.mouse.down();
  await bench.page.mouse.move(to.x + 30, to.y + 20, { steps: 6 });
  await bench.page.mouse.up();
  await shows(bench, moved);
  await bench.page.keyboard.press("Control+z");
  await shows(bench, FIRST);

  await blocks(bench).nth(2).click();
  await panel(bench).getByRole("button", { name: "Duplicate" }).click();
  await shows(bench, [...FIRST.slice(0, 3), "Refine", ...FIRST.slice(3)]);
  await panel(bench).getByRole("button", { name: "Take out" }).click();
  await shows(bench, FIRST);
  await blocks(bench).nth(8).focus();
  await bench.page.keyboard.press("Delete");
  await shows(bench, [...FIRST.slice(0, 8), "Temper"]);
  bench.assertNoTrouble();
  await bench.close();
});

test("what may follow is added from the strip, by the button at its end and by a key", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.page.locator(".blocks .last").click();
  await shows(bench, [...FIRST, "Temper 3"]);
  await blocks(bench).nth(7).focus();
  await bench.page.keyboard.press("Delete");
  await shows(bench, [...FIRST.slice(0, 7), "Temper 1", "Temper 2", "Temper 3"]);
  await blocks(bench).nth(6).focus();
  await bench.page.keyboard.press("+");
  await shows(bench, [...FIRST, "Temper 3"]);
  await blocks(bench).nth(2).focus();
  await bench.page.keyboard.press("+");
  await shows(bench, [...FIRST.slice(0, 3), "Refine", ...FIRST.slice(3), "Temper 3"]);
  bench.assertNoTrouble();
  await bench.close();
});

test("undone to the beginning and done again to the end, the route is the same", async () => {
  const bench = await BenchPage.ready(browser);
  const kept = () => bench.page.evaluate(() => localStorage.getItem("recalesce.bench"));
  for (const [at, key] of [[0, "Alt+ArrowRight"], [3, "Alt+ArrowLeft"], [2, "Delete"]]) {
    await blocks(bench).nth(at).focus();
    await bench.page.keyboard.press(key);
    await bench.page.waitForTimeout(450);
  }
  await bench.press("soak", "PageUp");
  await bench.page.waitForTimeout(800);
  const last = await kept();
  const lastTitles = await titles(bench);
  while (await undo(bench).isEnabled()) await undo(bench).click();
  await shows(bench, FIRST);
  while (await redo(bench).isEnabled()) await redo(bench).click();
  await shows(bench, lastTitles);
  await bench.page.waitForTimeout(800);
  assert.equal(await kept(), last);
  bench.assertNoTrouble();
  await bench.close();
});

test("a step is added and set in words; what departs from the handbook is marked", async () => {
  const bench = await BenchPage.ready(browser);
  await blocks(bench).nth(4).click();
  await panel(bench).getByRole("button", { name: "add a step" }).click();
  await panel(bench).locator("[data-value=normalise]").click();
  await shows(bench, [...FIRST.slice(0, 5), "Normalise", ...FIRST.slice(5)]);
  await panel(bench).getByTitle("Temperature of the step").click();
  const field = panel(bench).getByRole("textbox", { name: "Temperature of the piece" });
  await field.fill("2000");
  await field.press("Enter");
  assert.match(plain(await panel(bench).innerText()), /Between 150 °C and 1250 °C/);
  await field.fill("980");
  await field.press("Enter");
  await bench.shows(
    async () => /Departs from the handbook: 885 °C/.test(plain(await panel(bench).innerText())),
    true,
    "departure",
  );
  bench.assertNoTrouble();
  await bench.close();
});

test("a grade brings its handbook's steps, and slow cooling from above Acm a network", async () => {
  const bench = await BenchPage.ready(browser);
  await blocks(bench).nth(1).click();
  await panel(bench).getByTitle("Cooling of the step").click();
  await panel(bench).getByRole("button", { name: "in the furnace" }).click();
  await bench.page.keyboard.press("Escape");
  await panel(bench).getByTitle("Temperature of the step").click();
  const field = panel(bench).getByRole("textbox", { name: "Temperature of the piece" });
  await field.fill("950");
  await field.press("Enter");
  await bench.shows(
    async () => /A network of carbide/.test(await panel(bench).innerText()),
    true,
    "the network is told",
  );
  await panel(bench).getByRole("button", { name: "Handbook steps" }).click();
  await bench.shows(
    async () => /A network of carbide/.test(await panel(bench).innerText()),
    false,
    "the handbook has none",
  );
  bench.assertNoTrouble();
  await bench.close();
});

test("on the phone the steps have a tab of their own", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  await bench.tabs.first().tap();
  await panel(bench).waitFor();
  assert.match(plain(await bench.tabs.first().innerText()), /Before\s+5 steps/);
  const width = await bench.page.evaluate(() => document.documentElement.scrollWidth);
  assert.ok(width <= PHONE.width, `${width}`);
  // Of so many steps the open one has its name, whole.
  for (const [tab, name] of ["Forge", "Soak", "Quench", "Temper 1"].entries()) {
    await bench.tabs.nth(tab).tap();
    await bench.shows(
      async () =>
        plain(await bench.page.locator(".blocks b").evaluateAll((all) =>
          all
            .filter((name) => Number.parseFloat(getComputedStyle(name).fontSize) > 0)
            .map((name) => {
              const range = document.createRange();
              range.selectNodeContents(name);
              const { left, right } = range.getBoundingClientRect();
              return [name.textContent, left >= 0 && right <= innerWidth ? "whole" : "cut"].join(": ");
            })
            .join(),
        )),
      `${name}: whole`,
      "names of the strip",
    );
  }
  bench.assertNoTrouble();
  await bench.close();
});
