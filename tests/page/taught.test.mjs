// What the logbook has taught, kept with the shop: with which models it acts, what it says of furnace and
// temper, and where it is counted with.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, PHONE, asideOf, exampleOf, launch, plain } from "./bench_page.mjs";

let browser;
let example;
before(async () => {
  browser = await launch();
  example = await exampleOf(browser);
});
after(() => browser.close());

/** How long a search or a sample may take here, ms. */
const PATIENCE_MS = 60_000;

/** The version of the models, as what is learnt names it. */
const MODELS = "6";

/** A shop whose kiln is 12 K hotter than it reads, with a heat that is softer after tempers about 200 °C. */
function shop({ models = MODELS, tempers_c = [195, 215], ...changed } = {}) {
  const kiln = {
    name: "Kiln",
    least_c: 100,
    most_c: 1100,
    band_k: example.furnace_band_k,
    offset_k: 0,
    thermocouple: example.thermocouple,
    holds: true,
  };
  const heat = { heat: { grade: example.grade, composition: example.composition, end_quench: [] } };
  const one = (kind, owner, value) => ({ kind, owner, value, left_part: 0.5, runs: 4, ...(kind === "furnace_offset" && { half_band: 5.2 }) });
  return JSON.stringify({
    format: "recalesce",
    version: 8,
    kind: "shop",
    shop: {
      furnaces: [kiln],
      quenchants: [{ medium: "oil_fast", agitation: 1 }],
      colds: [],
      temper_oven: { least_c: 100, most_c: 300, band_k: 3 },
      tester: { error_hrc: 1.5 },
    },
    learnt: {
      is_on: true,
      ...(models && { models }),
      furnaces: [kiln],
      learnt: [
        one("furnace_offset", { furnace: 0 }, 12),
        one("quench_severity", { quenchants: ["oil_fast"] }, 0.6),
        { ...one("tempered_hardness", heat, -1), ...(tempers_c && { tempers_c }) },
      ],
      ...changed,
    },
  });
}

const opened = (text, options = {}) => BenchPage.ready(browser, { kept: { [KEYS.shop]: text }, ...options });
const keptShop = (bench) => bench.page.evaluate((key) => JSON.parse(localStorage.getItem(key)), KEYS.shop);
const acting = (bench) => bench.page.getByRole("region", { name: "What the logbook has taught" });

test("what was learnt with another version of the models is kept, left out and offered to be learnt again", async () => {
  for (const models of [null, "1"]) {
    const bench = await opened(shop({ models }), models ? { viewport: PHONE, hasTouch: true } : {});
    const untaught = await BenchPage.ready(browser);
    await acting(bench).getByText("learnt with another version of the models", { exact: false }).waitFor();
    assert.deepEqual(await bench.sentences(), await untaught.sentences());
    assert.deepEqual(await bench.accessibilityFaults(), []);
    assert.ok(await bench.page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
    await acting(bench).getByRole("button", { name: "Learn it again" }).click();
    await bench.page.getByRole("button", { name: "Find routes" }).waitFor();
    await bench.page.getByText("left out until the logbook is read again", { exact: false }).waitFor();
    const kept = await keptShop(bench);
    assert.equal(kept.learnt.learnt.length, 3);
    assert.equal(kept.learnt.models, models ?? undefined);
    bench.assertNoTrouble();
    await bench.close();
    await untaught.close();
  }
});

test("what was learnt and cannot be read is set aside by itself, and the shop stays", async () => {
  const damaged = shop({ learnt: [{ kind: "furnace_offset", value: "much" }] });
  const bench = await opened(damaged);
  await bench.page.getByText("What the logbook has taught could not be read", { exact: false }).waitFor();
  const [kept, aside] = await bench.page.evaluate(
    ([key, aside]) => [key, aside].map((key) => JSON.parse(localStorage.getItem(key))),
    [KEYS.shop, asideOf(KEYS.shop)],
  );
  assert.equal(kept.shop.furnaces[0].name, "Kiln");
  assert.equal(kept.learnt, undefined);
  assert.equal(aside.learnt.learnt[0].value, "much");
  assert.equal(await acting(bench).count(), 0);
  await bench.go("Decide");
  await bench.page.getByText("The shop", { exact: true }).click();
  assert.equal(await bench.page.locator(".owned").first().getByRole("textbox").first().inputValue(), "Kiln");
  // It is said once.
  await bench.reload();
  assert.equal(await bench.page.getByText("could not be read", { exact: false }).count(), 0);
  bench.assertNoTrouble();
  await bench.close();
});

test("the furnace is told what to set, and the temper whether it is reached, on bench and card", async () => {
  const bench = await opened(shop({ tempers_c: [450, 500] }));
  const soak = example.soak.temperature_c;
  const said = async () => plain(await acting(bench).textContent());
  await acting(bench).getByText("Counted with what the logbook has taught:").waitFor();
  const first = await said();
  assert.ok(
    first.includes(`Set to ${soak} °C, as planned, the piece comes to ${soak + 12} °C, and the numbers count with that; ${soak - 12} °C would give ${soak} °C. That offset is known within ±6 °C, nine in ten`),
    first,
  );
  assert.match(first, /The hardness after tempering of the heat of 52100 was learnt from tempers of 450 °C to 500 °C and does not reach this temper at \d+ °C\./);
  assert.equal(await acting(bench).locator("li").count(), 1);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  await bench.toCard();
  const card = bench.page.locator(".card");
  await card.getByText(`${soak - 12} °C would give ${soak} °C`, { exact: false }).waitFor();
  await bench.go("Bench");
  // Set so, that is the plan.
  await acting(bench).getByRole("button", { name: `Set ${soak - 12}` }).click();
  await bench.savedRoute((route) => route.furnace_offset_k === 12);
  await bench.until(said, (text) => text.includes(`Set to ${soak - 12} °C, as planned, the piece comes to ${soak} °C. That offset is known within`), "the set point");
  assert.equal(await acting(bench).getByRole("button", { name: /^Set/ }).count(), 0);
  bench.assertNoTrouble();
  await bench.close();
});

test("a furnace that cannot be set so far says what the piece gets to", async () => {
  const text = shop();
  const cool = JSON.parse(text);
  cool.learnt.furnaces[0].most_c = example.soak.temperature_c + 5;
  cool.learnt.learnt[0].value = -30;
  const bench = await opened(JSON.stringify(cool));
  await acting(bench).getByText("can be set no hotter than", { exact: false }).waitFor();
  assert.equal(await acting(bench).getByRole("button", { name: /^Set/ }).count(), 0);
  bench.assertNoTrouble();
  await bench.close();
});

test("what is not told apart sets no furnace, and a furnace that is left out is told with the reason", async () => {
  const entangled = JSON.parse(shop());
  entangled.learnt.learnt[0].entangled_with = ["quenched_hardness"];
  const bench = await opened(JSON.stringify(entangled));
  await acting(bench).getByText("What to set is not told: the measurements do not tell this from the hardness of the heat as quenched.", { exact: false }).waitFor();
  assert.equal(await acting(bench).getByRole("button", { name: /^Set/ }).count(), 0);
  await bench.openWord("Furnace");
  const field = bench.field("The piece may be this far from the reading");
  await field.fill("17 °C");
  await field.press("Enter");
  await acting(bench).getByText("What was learnt of the furnace “Kiln” is left out: its band is ", { exact: false }).waitFor();
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("a tab with the bench alone hears what another has switched on or off", async () => {
  const bench = await opened(shop({ is_on: false }));
  const other = await bench.tab();
  await other.go("Decide");
  await other.page.getByRole("button", { name: "on", exact: true }).click();
  await acting(bench).getByText("Counted with what the logbook has taught:").waitFor();
  await acting(bench).getByRole("button", { name: "Leave it out" }).click();
  await other.shows(() => other.page.getByRole("button", { name: "off", exact: true }).getAttribute("aria-pressed"), "true");
  for (const tab of [bench, other]) tab.assertNoTrouble();
  await bench.close();
});

test("table, routes side by side and sweep count with it, and a run keeps that its prediction did", async () => {
  const bench = await opened(shop());
  const plainBench = await BenchPage.ready(browser);
  await acting(bench).waitFor();
  await bench.page.getByText("It counts with what the logbook has taught.", { exact: false }).waitFor();
  const cells = async (of) => {
    await of.quenchCells.first().waitFor();
    const labels = (await of.quenchLabels()).map(plain);
    return labels.filter((label) => label.startsWith("Fast oil, 4.0 mm"));
  };
  const without = await cells(plainBench);
  await bench.until(() => cells(bench), (labels) => labels[0] !== without[0], "the cell of the learnt quenchant");
  await plainBench.close();
  await bench.logRun();
  await bench.page.getByText("counted with what the logbook had taught", { exact: false }).first().waitFor();
  await bench.go("Decide");
  const button = (name) => bench.page.getByRole("button", { name, exact: true });
  assert.equal(await bench.page.getByText("left out here", { exact: false }).count(), 0);
  const lists = bench.page.getByText("Counted with what the logbook has taught:", { exact: false });
  const before = await lists.count();
  await button("Compare").click();
  await bench.page.getByRole("region", { name: "Routes side by side" }).waitFor({ timeout: PATIENCE_MS });
  await bench.shows(() => lists.count(), before + 1, "what routes side by side count with");
  await button("Take it through").click();
  await bench.page.getByRole("img", { name: /^hardness after the last step, HRC against/ }).waitFor({ timeout: PATIENCE_MS });
  await bench.shows(() => lists.count(), before + 2, "what the sweep counts with");
  await button("Find routes").click();
  await bench.page.getByText("Done.", { exact: true }).first().waitFor({ timeout: PATIENCE_MS });
  await bench.page.getByText(/the furnace set to \d+\s°C to have \d+\s°C at the piece/).first().waitFor();
  // The colours of the button change over a moment when a search ends.
  await bench.until(() => bench.accessibilityFaults(), (faults) => faults.length === 0, "faults of access");
  bench.assertNoTrouble();
  await bench.close();
});

test("pieces are drawn with the shop's furnace, oven and tester, and it is said", async () => {
  const bench = await opened(shop({ is_on: false }));
  await bench.page.getByText("How sure, by pieces drawn", { exact: true }).click();
  const said = bench.page.getByText("Drawn with the furnace as on the bench", { exact: false });
  await said.waitFor();
  const words = plain(await said.textContent());
  assert.match(words, /“Kiln” of your shop; tempers within ±3 °C, your oven; thickness within ±0\.10 mm, as usual; .*your tester within ±1\.5 HRC/);
  const drawn = bench.page.locator(".drawn");
  await drawn.getByText("as your tester reads it", { exact: false }).waitFor({ timeout: PATIENCE_MS });
  const [[least, most], [leastRead, mostRead]] = await drawn.evaluate((drawn) =>
    [...drawn.querySelectorAll("dd")].slice(0, 2).map((one) => one.textContent.match(/[\d.]+/g).map(Number)),
  );
  assert.ok(leastRead < least && most < mostRead, `${least} ${most} ${leastRead} ${mostRead}`);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});
