// An experiment given away as a link, and taken in from a link or from pasted text.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PAGE_URL, PAGE_URL_BELOW, exampleOf, launch } from "./bench_page.mjs";

let browser, mine;
before(async () => {
  browser = await launch();
  mine = {
    title: "<img src=x onerror=alert(1)><script>alert(2)</script>",
    about: "One of my own.",
    minutes: 5,
    route: await exampleOf(browser),
    steps: [{ change: { task: "Hotter.", until: [{ number: "soak_c", least: 850 }], way: { soak: { temperature_c: 860 } } } }],
    at_the_forge: "Sparks.",
  };
});
after(() => browser.close());

async function paste(bench, text) {
  const page = bench.page;
  const field = page.getByRole("textbox", { name: "Link or text of an experiment" });
  if (!(await field.isVisible())) await page.getByText("Paste a link or the text of an experiment").click();
  await field.fill(text);
  await page.getByRole("button", { name: "Take what is pasted" }).click();
  return field;
}

/** Pastes the experiment and copies its link. */
async function linkOfMine() {
  const bench = await BenchPage.ready(browser, { permissions: ["clipboard-read", "clipboard-write"] });
  await bench.go("Experiments");
  await paste(bench, JSON.stringify(mine));
  await bench.page.getByRole("button", { name: "Begin with it" }).waitFor();
  await bench.page.getByRole("button", { name: `Copy link: ${mine.title}`, exact: true }).click();
  await bench.messages.filter({ hasText: "on the clipboard" }).waitFor();
  const link = await bench.page.evaluate(() => navigator.clipboard.readText());
  assert.equal(await bench.foreignElements.count(), 0);
  bench.assertNoTrouble();
  await bench.close();
  return new URL(link).hash;
}

test("an experiment goes into a link and comes out of it, whatever its title holds", async () => {
  const hash = await linkOfMine();
  assert.match(hash, /^#experiment=1\.[\w-]+$/);
  const bench = await (await BenchPage.open(browser, { url: `${PAGE_URL_BELOW}${hash}` })).started();
  const begin = bench.page.getByRole("button", { name: "Begin with it" });
  await begin.waitFor();
  // A reload does not bring it again.
  assert.equal(await bench.page.evaluate(() => location.hash), "");
  assert.equal(await bench.foreignElements.count(), 0);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  // It is told as one of others, on the list and where it runs.
  const foreign = (of) => of.getByText("not of this project", { exact: false });
  assert.equal(await foreign(bench.page).count(), 1);
  await begin.click();
  const guide = bench.page.getByRole("region", { name: "Experiment" });
  await guide.waitFor();
  assert.equal(await foreign(guide).count(), 1);
  assert.equal(await guide.getByRole("heading").first().textContent(), mine.title);
  await guide.getByRole("button", { name: "Show me" }).click();
  await guide.getByText("Done.", { exact: true }).waitFor();
  bench.assertNoTrouble();
  await bench.close();
});

test("a damaged link is refused in a sentence, and nothing changes", async () => {
  const hash = await linkOfMine();
  for (const [bad, says] of [
    [hash.slice(0, -5), /damaged or cut short/],
    [hash.replace("=1.", "=9."), /of version 9/],
    ["#experiment=<script>alert(1)</script>", /no link to an experiment/],
    ["#experiment=", /no link to an experiment/],
    [`#experiment=${"1".repeat(20_000)}`, /at most 16000 are read/],
  ]) {
    const bench = await BenchPage.ready(browser, { url: `${PAGE_URL}${bad}` });
    assert.match(await bench.message(), new RegExp(`experiment of the link was not opened.*${says.source}`));
    assert.equal(await bench.foreignElements.count(), 0);
    assert.equal(await bench.page.getByRole("region", { name: "Experiment" }).count(), 0);
    bench.assertNoTrouble();
    await bench.close();
  }
});

test("what is pasted is a link or the text of a file; what cannot be read stays in its field", async () => {
  const hash = await linkOfMine();
  const bench = await BenchPage.ready(browser);
  await bench.go("Experiments");
  const field = await paste(bench, "half of something");
  await bench.page.getByText("The experiment cannot be read", { exact: false }).waitFor();
  assert.equal(await field.inputValue(), "half of something");
  await paste(bench, `${PAGE_URL}${hash}`);
  await bench.page.getByRole("button", { name: "Begin with it" }).waitFor();
  assert.equal(await field.inputValue(), "");
  const starts = bench.page.getByRole("button", { name: /^Start: / });
  const count = await starts.count();
  // The same once more is on the list already.
  await paste(bench, JSON.stringify(mine));
  await bench.page.getByRole("button", { name: "Begin with it" }).waitFor();
  assert.equal(await starts.count(), count);
  // A reload does not lose it.
  await bench.reload();
  await bench.go("Experiments");
  await bench.page.getByRole("button", { name: `Start: ${mine.title}`, exact: true }).waitFor();
  assert.equal(await starts.count(), count);
  bench.assertNoTrouble();
  await bench.close();
});
