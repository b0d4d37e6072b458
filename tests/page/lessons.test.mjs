// Experiments: each is played to its end on the live bench, with wrong and right answers.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, exampleOf, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

async function lessons(options = {}) {
  const bench = await BenchPage.ready(browser, options);
  await bench.go("Experiments");
  await bench.page.getByRole("heading", { name: "Experiments" }).waitFor();
  const guide = bench.page.getByRole("region", { name: "Experiment" });
  const press = (name) => guide.getByRole("button", { name, exact: true }).click();
  return { bench, guide, press, starts: bench.page.getByRole("button", { name: /^Start: / }) };
}

/** Does the step that is open, first wrong where it can be, and goes on. */
async function doStep({ bench, guide, press }) {
  const choices = guide.getByRole("group", { name: "What do you expect?" }).getByRole("button");
  const field = guide.getByRole("textbox");
  let kind = "told";
  if (await choices.count()) {
    kind = "predicted";
    const told = [];
    for (let place = 0; place < (await choices.count()); place += 1) {
      await choices.nth(place).click();
      told.push(plain(await guide.locator(".told").textContent()));
    }
    assert.equal(told.filter((text) => /^So it is/.test(text)).length, 1, told.join("|"));
  } else if (await field.count()) {
    kind = "asked";
    const answer = async (text) => {
      await field.fill(text);
      await field.press("Enter");
      await guide.locator(".told").waitFor();
      return plain(await guide.locator(".told").textContent());
    };
    assert.match(await answer("-9999"), /^Not quite: the model says/);
    const right = plain(await guide.locator(".answer").textContent()).replace("×", "");
    assert.match(await answer(String(Number.parseFloat(right.replace("\u2212", "-")))), /^Right/);
  } else if (await guide.getByRole("button", { name: "Show me" }).count()) {
    kind = "changed";
    assert.equal(await guide.getByText("Done.", { exact: true }).count(), 0);
    await press("Show me");
    await guide.getByText("Done.", { exact: true }).waitFor();
  }
  await press("Go on");
  return kind;
}

test("every experiment is played to its end, and one's own route comes back", async () => {
  const place = await lessons();
  const { bench, guide, press, starts } = place;
  const count = await starts.count();
  assert.ok(count >= 10, `${count}`);
  for (let one = 0; one < count; one += 1) {
    await starts.nth(one).click();
    await guide.waitFor();
    const kinds = new Set();
    while (!(await guide.getByRole("button", { name: "All experiments" }).count())) {
      kinds.add(await doStep(place));
    }
    assert.ok(kinds.has("predicted") && kinds.has("changed") && kinds.has("asked"), [...kinds].join());
    await press("All experiments");
    await starts.first().waitFor();
  }
  assert.equal(await bench.page.getByText("Played to its end.", { exact: false }).count(), count);
  await bench.go("Bench");
  assert.equal(await guide.count(), 0);
  await bench.savedRoute(({ grade, soak }) => grade === "52100" && soak.temperature_c === 830);
  await bench.reload();
  await bench.go("Experiments");
  await starts.first().waitFor();
  assert.equal(await bench.page.getByText("Played to its end.", { exact: false }).count(), count);
  bench.assertNoTrouble();
  await bench.close();
});

test("a goal is reached by hand, and what is not a number is told", async () => {
  const { bench, guide, press, starts } = await lessons({ viewport: PHONE, hasTouch: true });
  await starts.first().tap();
  await guide.waitFor();
  assert.deepEqual(await bench.accessibilityFaults(), []);
  assert.ok(await bench.page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
  await press("Go on");
  // What is to be predicted is veiled, for keys too, until something is chosen.
  const sheet = bench.page.locator("main.bench");
  const veil = () =>
    sheet.evaluate((main) => [main.inert, getComputedStyle(main).filter.startsWith("blur")].join());
  await bench.until(veil, (is) => is === "true,true", "the veil over the bench");
  // Reading goes on with the new step, and the guide stays in sight.
  await bench.until(
    () => bench.page.evaluate(() => document.activeElement?.className),
    (name) => name === "guide-text",
    "the focus on the new step",
  );
  await bench.page.evaluate(() => scrollTo(0, 900));
  assert.ok((await guide.boundingBox()).y >= 0);
  await guide.getByRole("button", { name: /More of it/ }).tap();
  await bench.until(veil, (is) => is === "false,false", "the bench without a veil");
  await press("Go on");
  await bench.page.getByRole("tab", { name: /Soak/ }).tap();
  for (let times = 0; times < 11; times += 1) await bench.press("soak", "PageUp");
  await guide.getByText("Done.", { exact: true }).waitFor();
  await press("Go on");
  await press("Go on");
  await guide.getByRole("textbox").fill("hard");
  await guide.getByRole("textbox").press("Enter");
  await guide.getByText("Write a number, such as 60.5.").waitFor();
  await press("Leave the experiment");
  await bench.savedRoute(({ grade }) => grade === "52100");
  // Nor is there one where an experiment that asks is left.
  await bench.go("Experiments");
  await starts.nth(1).tap();
  await bench.until(veil, (is) => is === "true,true", "the veil over the next");
  await press("Leave the experiment");
  await bench.until(veil, (is) => is === "false,false", "the bench after it was left");
  bench.assertNoTrouble();
  await bench.close();
});

test("a teacher's experiment is loaded from a file, and a damaged one is told", async () => {
  const { bench, starts } = await lessons();
  const before = await starts.count();
  const load = (name, text) =>
    bench.page.locator("input[type=file][aria-label=Experiment]").setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
  const route = await exampleOf(browser);
  const mine = {
    title: "<img src=x onerror=alert(1)>",
    about: "One of my own.",
    minutes: 5,
    route,
    steps: [{ change: { task: "Hotter.", until: [{ number: "soak_c", least: 850 }], way: { soak: { temperature_c: 860 } } } }],
    at_the_forge: "Sparks.",
  };
  await load("mine.json", JSON.stringify(mine));
  await bench.until(() => starts.count(), (count) => count === before + 1, "one more");
  // The same title again: it is asked what shall become of it.
  await load("again.json", JSON.stringify({ ...mine, minutes: 7 }));
  await bench.page.getByRole("button", { name: "Put the new one in its place" }).click();
  await bench.page.getByText("About 7 minutes").waitFor();
  assert.equal(await starts.count(), before + 1);
  await load("old.json", JSON.stringify({ ...mine, minutes: 9 }));
  await bench.page.getByRole("button", { name: "Keep the old one" }).click();
  assert.equal(await bench.page.getByText("About 9 minutes").count(), 0);
  const taken = await starts.first().getAttribute("aria-label");
  await load("theirs.json", JSON.stringify({ ...mine, title: taken.replace("Start: ", "") }));
  await bench.page.getByText("is an experiment of the project", { exact: false }).waitFor();
  await load("newer.json", JSON.stringify({ ...mine, format: "recalesce-experiment", version: 9 }));
  await bench.page.getByText("The experiment is of version 9", { exact: false }).waitFor();
  await load("half.json", JSON.stringify(mine).slice(0, 300));
  await bench.page.getByText("The experiment cannot be read", { exact: false }).waitFor();
  await load("wrong.json", JSON.stringify({ ...mine, steps: [] }));
  await bench.page.getByText("steps: there are 0", { exact: false }).waitFor();
  bench.assertNoTrouble();
  await bench.close();
});
