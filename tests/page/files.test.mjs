// Charts and tables as files: an SVG that parses, a PNG that is one, a CSV that holds what is shown.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** The charts of the bench, with words that their axes bear. */
const ON_BENCH = {
  route: [],
  "phase map": ["carbon, wt %"],
  soak: ["carbide", "grain number"],
  quench: ["time from leaving the furnace"],
  section: [],
  temper: ["HRC"],
  "what moves hardness": ["HRC"],
  "hardness by step": ["after quench"],
};

/** What a press of a button gives as a file. */
async function given(bench, press) {
  const [download] = await Promise.all([bench.page.waitForEvent("download"), press()]);
  return { name: download.suggestedFilename(), content: await readFile(await download.path()) };
}

function saveOf(bench, chart) {
  return bench.page.locator(`summary[aria-label="Save the chart: ${chart}"]`).locator("..");
}

/** A chart in one format, by keys alone. */
function saved(bench, chart, format) {
  return given(bench, async () => {
    const save = saveOf(bench, chart);
    await save.locator("summary").focus();
    await bench.page.keyboard.press("Enter");
    await save.getByRole("button", { name: format }).focus();
    await bench.page.keyboard.press("Enter");
  });
}

/** The texts of an SVG, as the browser's own parser reads it. */
function textsOf(bench, svg) {
  return bench.page.evaluate((text) => {
    const read = new DOMParser().parseFromString(text, "image/svg+xml");
    if (read.querySelector("parsererror")) throw new Error(read.documentElement.textContent);
    const { width, height } = read.documentElement;
    const texts = [...read.querySelectorAll("text")].map((one) => one.textContent);
    return { texts, size: [width.baseVal.value, height.baseVal.value], title: read.querySelector("title").textContent };
  }, svg);
}

async function checkChart(bench, chart, words) {
  const file = `recalesce-${chart.replaceAll(" ", "-")}`;
  const svg = await saved(bench, chart, "SVG");
  assert.equal(svg.name, `${file}.svg`);
  const { texts, size, title } = await textsOf(bench, svg.content.toString("utf8"));
  assert.ok(title.length > 10, title);
  for (const word of words) assert.ok(texts.some((text) => plain(text).includes(word)), `${chart}: ${word} in ${texts.join(" | ")}`);
  const png = await saved(bench, chart, "PNG");
  assert.equal(png.name, `${file}.png`);
  assert.deepEqual([...png.content.subarray(0, 8)], [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  assert.ok(png.content.length > 1_000, `${png.content.length} bytes`);
  const pixels = [png.content.readUInt32BE(16), png.content.readUInt32BE(20)];
  pixels.forEach((side, i) => assert.ok(Math.abs(side - 3 * size[i]) <= 3, `${chart}: ${pixels} of ${size}`));
}

test("every chart of the bench is saved as SVG and as PNG, by keys alone", async () => {
  const bench = await BenchPage.ready(browser);
  await saveOf(bench, "route").waitFor({ state: "attached" });
  const shown = await bench.page.locator(".save-chart:not([hidden]) summary").evaluateAll((all) => all.map((one) => one.getAttribute("aria-label").replace("Save the chart: ", "")));
  assert.deepEqual([...shown].sort(), Object.keys(ON_BENCH).sort());
  for (const [chart, words] of Object.entries(ON_BENCH)) await checkChart(bench, chart, words);
  // Escape closes it, and the focus stays.
  const save = saveOf(bench, "quench");
  await save.locator("summary").press("Enter");
  await save.getByRole("button", { name: "PNG" }).focus();
  await bench.page.keyboard.press("Escape");
  assert.equal(await save.getAttribute("open"), null);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("the section says of a core how much is pearlite, and “partly” only where some of it hardens", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.takeGrade("1095");
  await bench.takeQuenchant("oil_medium");
  await bench.openWord("Section");
  await bench.pick("Shape", "round");
  for (const [size, words, isPart] of [
    [4, "partly pearlite from the surface in", true],
    [8, "pearlite from the surface in", false],
  ]) {
    await bench.type(`${size} mm`, "Diameter");
    await bench.savedRoute(({ section }) => section.diameter_mm === size);
    const svg = await saved(bench, "section", "SVG");
    const { texts } = await textsOf(bench, svg.content.toString("utf8"));
    const told = texts.map(plain);
    assert.deepEqual(told.filter((text) => text.includes("from the surface in")), [words]);
    const [, share] = /the core holds ([\d.]+) % pearlite/.exec(told.join("; "));
    assert.equal(Number(share) < 90, isPart, `${size} mm: ${told.join("; ")}`);
    await bench.openWord("Section");
  }
  bench.assertNoTrouble();
  await bench.close();
});

test("the charts of panels and places are saved", async () => {
  const bench = await BenchPage.ready(browser);
  for (const [title, chart] of [[/other rates of cooling/, "continuous cooling"], [/the end-quench bar/, "end quench"]]) {
    await bench.page.getByText(title).first().click();
    await saveOf(bench, chart).waitFor();
    await checkChart(bench, chart, []);
  }
  bench.assertNoTrouble();
  await bench.close();
});

/** Rows and cells of RFC 4180. */
function rowsOf(text) {
  const rows = [[""]];
  let isQuoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const row = rows.at(-1);
    const letter = text[at];
    if (letter === '"' && isQuoted && text[at + 1] === '"') {
      row[row.length - 1] += '"';
      at += 1;
    } else if (letter === '"') isQuoted = !isQuoted;
    else if (letter === "," && !isQuoted) row.push("");
    else if (letter === "\r" && !isQuoted) {
      at += 1;
      rows.push([""]);
    } else row[row.length - 1] += letter;
  }
  assert.deepEqual(rows.pop(), [""], "a line ends with its sign");
  return rows;
}

/** Rows and columns of the table that a control stands behind; nothing where it stands behind a chart. */
function shownBefore(button) {
  return button.evaluate((element) => {
    const before = element.parentElement.previousElementSibling;
    const table = before.querySelector("table") ?? before;
    return table.rows ? [table.rows.length, table.rows[0].cells.length] : null;
  });
}

async function checkTable(bench, name) {
  const button = bench.page.getByRole("button", { name: `Save the table as CSV: ${name}`, exact: true });
  await button.first().waitFor();
  const file = await given(bench, () => button.first().click());
  assert.equal(file.name, `recalesce-${name.replaceAll(" ", "-")}.csv`);
  const text = file.content.toString("utf8");
  assert.equal(text[0], "\uFEFF", "spreadsheets are told that it is UTF-8");
  const rows = rowsOf(text.slice(1));
  const shown = await shownBefore(button.first());
  assert.ok(rows.length > 1);
  for (const row of rows) assert.equal(row.length, rows[0].length, row.join("|"));
  return { rows, shown };
}

async function checkShown(bench, name) {
  const { rows, shown } = await checkTable(bench, name);
  assert.deepEqual([rows.length, rows[0].length], shown, name);
  return rows;
}

test("tables of the bench come as they are shown, on the scale of the page", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.page.getByText("The phases as a table").first().click();
  await checkShown(bench, "stable phases");
  const phases = await checkShown(bench, "phases at the soak");
  assert.match(phases[0].join("|"), /^Phase\|Share of the mass, %$/);
  const shares = phases.slice(1).map((row) => Number(row[1]));
  assert.ok(Math.abs(shares.reduce((sum, share) => sum + share, 0) - 100) <= 2, shares.join());
  await checkShown(bench, "places");
  await bench.page.getByText(/other rates of cooling/).first().click();
  await checkShown(bench, "continuous cooling");
  await bench.page.getByText(/the end-quench bar/).first().click();
  const { rows: curve } = await checkTable(bench, "end quench curve");
  assert.match(curve[0].join("|"), /^distance from the quenched end, mm\|hardness, HRC\|band, HRC\|/);
  for (const row of curve.slice(1)) assert.ok(row.slice(0, 3).every((cell) => Number.isFinite(Number(cell)) && cell !== ""), row.join());
  await bench.page.locator(".quenches table").waitFor();
  const { rows, shown } = await checkTable(bench, "quenchants");
  // Of each size the seconds and the factor.
  assert.deepEqual([rows.length, rows[0].length], [shown[0], 2 * shown[1] - 1]);
  assert.match(rows[0][1], /mm: to spare, s$/);
  assert.ok(rows.slice(1).every((row) => row.slice(1).every((cell) => cell === "" || Number.isFinite(Number(cell)))), rows[1].join());
  bench.assertNoTrouble();
  await bench.close();
});

test("the score on the Sources page lists every value that is missed, fits a phone, and comes as a table", async () => {
  for (const options of [{}, { viewport: PHONE, colorScheme: "dark" }]) {
    const bench = await BenchPage.ready(browser, options);
    await bench.go("Sources");
    const score = bench.page.getByRole("region", { name: "How near the models come" });
    await score.waitFor();
    await bench.page.getByRole("button", { name: "How near the models come" }).click();
    await bench.until(() => score.evaluate((section) => section === document.activeElement), (is) => is, "the focus on the score");
    const rows = await checkShown(bench, "score published");
    const quantity = rows.findIndex(([name]) => name.startsWith("retained austenite"));
    assert.match(rows[quantity][2], /vol %$/);
    // Each kind of values has its own sum.
    const sum = (column) => rows.slice(1, -1).reduce((total, row) => total + Number(row[column]), 0);
    const [name, values, , inside] = rows.at(-1);
    assert.deepEqual([name, Number(values), Number(inside)], ["together", sum(1), sum(3)]);
    const missed = sum(1) - sum(3);
    assert.ok(missed > 0);
    assert.ok((await score.locator("li").count()) > missed);
    assert.doesNotMatch(await score.innerText(), /pycalphad|scribd|\[seen\]/i);
    assert.match(await score.innerText(), new RegExp(`Values outside their tolerance: ${missed}`));
    assert.ok(await bench.page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), "no wider than the window");
    assert.deepEqual(await bench.accessibilityFaults(), []);
    bench.assertNoTrouble();
    await bench.close();
  }
});

test("the card and what goes into a number come as tables", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.numbers.first().click();
  await bench.opened.waitFor();
  while ((await bench.opened.locator(".goes-in").count()) === 0) await bench.opened.locator(".number").last().click();
  const { rows, shown } = await checkTable(bench, "what goes in");
  assert.deepEqual([rows.length - 1, rows[0].length], shown);
  assert.match(rows[0].join("|"), /^Symbol\|What it is\|Value/);
  assert.ok(rows.slice(1).every((row) => row.every((cell) => cell !== "")), rows.join("; "));
  await bench.page.keyboard.press("Escape");
  await bench.toCard();
  const { rows: card } = await checkTable(bench, "card");
  assert.equal(card[0].join("|"), "Piece|Step|Set|Also set|Look for|Hardness after it|Cautions");
  assert.deepEqual(card.slice(1).map(([, step]) => plain(step)), await bench.cardSteps());
  await checkShown(bench, "what to expect");
  for (const table of ["card", "what to expect"]) await bench.saveStandsBelow(table);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});
