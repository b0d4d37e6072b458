// Numbers with a decimal comma: chosen by the browser's language, then by the reader; everywhere, and only
// in numbers.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { inComma } from "../../public/decimals.js";
import { BenchPage, KEYS, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

test("only the point of a number becomes a comma", () => {
  for (const [made, shown] of [
    ["62.0 HRC", "62,0 HRC"],
    ["−0.5 to ×1.4, ±0.25, 3.80–4.10 (1.5)", "−0,5 to ×1,4, ±0,25, 3,80–4,10 (1,5)"],
    ["It holds by 5.3 s. 2 min.", "It holds by 5,3 s. 2 min."],
    ["about 0.5.", "about 0,5."],
    ["a share of 1.0000 or 2.1234", "a share of 1,0000 or 2,1234"],
    ["W.-Nr. 1.2842 and 1.3505, 4.0 mm", "W.-Nr. 1.2842 and 1.3505, 4,0 mm"],
    ["version 0.1.0, 2.3.4.5", "version 0.1.0, 2.3.4.5"],
    ["https://doi.org/10.1016/j.cpc.2009.09.018", "https://doi.org/10.1016/j.cpc.2009.09.018"],
    ["A255.3", "A255.3"],
    ["“1.550 mm” is above 1.5 mm", "“1.550 mm” is above 1,5 mm"],
    ["52100, 830 °C.", "52100, 830 °C."],
  ]) {
    assert.equal(inComma(made), shown);
    assert.equal(inComma(shown), shown, "once is enough");
  }
});

/** Notes what is written on canvases; before the page loads, so that it sees what arrives there. */
const watchCanvases = (page) =>
  page.addInitScript(() => {
    window.drawn = [];
    const own = CanvasRenderingContext2D.prototype.fillText;
    CanvasRenderingContext2D.prototype.fillText = function (text, ...where) {
      window.drawn.push(text);
      return own.call(this, text, ...where);
    };
  });
const drawn = (bench) => bench.page.evaluate(() => window.drawn);

/** All texts and words of attributes that are shown with a point between digits. */
const pointed = (bench) =>
  bench.page.evaluate(() => {
    const found = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
    for (let node = walker.currentNode; node; node = walker.nextNode()) {
      const element = node.nodeType === Node.TEXT_NODE ? node.parentElement : node;
      if (element.closest("[translate=no], textarea, script")) continue;
      if (node.nodeType === Node.TEXT_NODE) found.push(node.data);
      else found.push(...["aria-label", "aria-valuetext", "title", "placeholder"].map((name) => node.getAttribute(name) ?? ""), node instanceof HTMLInputElement ? node.value : "");
    }
    // Steel numbers, contents as a publication prints them (C0.82) and clauses (3.4.1) keep theirs.
    return found.filter((text) => /\d\.\d/.test(text.replace(/\b1\.\d{4}\b|[A-Z][a-z]?\d\.\d+|(\d+\.){2,}\d+/g, "")));
  });
const german = (options = {}) => BenchPage.ready(browser, { locale: "de-DE", before: watchCanvases, ...options });
const decimals = (bench, mark) => bench.page.getByRole("group", { name: "Decimals" }).getByRole("button", { name: mark, exact: true });

test("a browser whose language writes commas is shown commas, in sentences, on charts and in fields", async () => {
  const bench = await german();
  await bench.page.locator(".save-chart").first().waitFor({ state: "attached" });
  assert.deepEqual(await pointed(bench), []);
  assert.ok((await bench.sentences()).some((line) => /\d,\d/.test(line)));
  assert.match((await bench.words()).join(" "), /4,0 mm/);
  const texts = await drawn(bench);
  assert.ok(texts.some((text) => /\d,\d/.test(text)), texts.join(" "));
  assert.deepEqual(texts.filter((text) => /\d\.\d/.test(text)), []);
  // The designation keeps its point.
  assert.match(await bench.page.locator(".piece small").innerText(), /1\.3505/);
  // What moves is marked as it moves.
  await bench.press("soak-time", "ArrowUp", "PageUp");
  await bench.press("quench", "ArrowUp", "ArrowUp");
  assert.deepEqual(await pointed(bench), []);
  // Fields show it and read both, also where a comma may part thousands elsewhere.
  await bench.openWord("Section");
  const field = bench.field("Spine");
  assert.equal(plain(await field.inputValue()), "4,0 mm");
  for (const [typed, shown] of [["3,5", "3,5 mm"], ["4.5", "4,5 mm"], ["1,375", "1,375 mm"]]) {
    await bench.type(typed, "Spine");
    await bench.shows(async () => plain(await field.inputValue()), shown);
  }
  await bench.type("1.500", "Spine");
  await bench.shows(() => bench.wrong.innerText(), "“1.500” may be 1500 or 1,500. Write it without the point.");
  assert.equal(await field.inputValue(), "1.500");
  await bench.type("1,2,3", "Spine");
  assert.match(await bench.wrong.innerText(), /“1,2,3”/);
  bench.assertNoTrouble();
  await bench.close();
});

test("a number by itself in the logbook is asked about where its point may part thousands", async () => {
  const bench = await german();
  await bench.go("Logbook");
  await bench.logRun();
  await bench.write("Grain by fracture, ASTM number", "8.500");
  await bench.shows(async () => (await bench.wrongs()).join(" "), "“8.500” may be 8500 or 8,500. Write it without the point.");
  await bench.write("Grain by fracture, ASTM number", "8,5");
  await bench.shows(async () => (await bench.wrongs()).join(" "), "");
  bench.assertNoTrouble();
  await bench.close();
});

test("every place and every opened number", async () => {
  const bench = await german();
  for (const number of await bench.numbers.all()) {
    await number.click();
    await bench.opened.waitFor();
    assert.deepEqual(await pointed(bench), []);
    await bench.page.keyboard.press("Escape");
  }
  for (const line of await bench.page.locator("details:visible > summary").all()) await line.click();
  assert.deepEqual(await pointed(bench), []);
  for (const place of ["Decide", "Experiments", "Shelf", "Logbook", "Sources"]) {
    await bench.go(place);
    await bench.page.locator("main").first().waitFor();
    assert.deepEqual(await pointed(bench), [], place);
  }
  await bench.button(/card$/).first().click();
  await bench.page.locator("main svg text").first().waitFor();
  assert.deepEqual(await pointed(bench), [], "card");
  assert.match(await bench.page.locator("main").innerText(), /\d,\d/);
  bench.assertNoTrouble();
  await bench.close();
});

test("the mark is changed in the head, both ways, and kept; texts come back as they were", async () => {
  const bench = await BenchPage.ready(browser, { before: watchCanvases });
  const all = () => bench.page.evaluate(() => document.querySelector("#app").innerText);
  await bench.page.locator(".save-chart").first().waitFor({ state: "attached" });
  await bench.quenchCells.first().waitFor();
  const before = await all();
  assert.equal(await decimals(bench, "0.5").getAttribute("aria-pressed"), "true");
  await bench.page.evaluate(() => (window.drawn = []));
  await decimals(bench, "0,5").click();
  await bench.shows(() => decimals(bench, "0,5").getAttribute("aria-pressed"), "true");
  assert.deepEqual(await pointed(bench), []);
  await bench.until(() => drawn(bench), (texts) => texts.some((text) => /\d,\d/.test(text)), "charts drawn anew");
  await bench.untilStored(KEYS.preferences, (text) => /"decimal_comma":true/.test(text));
  await bench.reload();
  assert.deepEqual(await pointed(bench), []);
  await bench.page.locator(".save-chart").first().waitFor({ state: "attached" });
  await decimals(bench, "0.5").click();
  await bench.shows(() => decimals(bench, "0.5").getAttribute("aria-pressed"), "true");
  await bench.shows(all, before);
  await bench.untilStored(KEYS.preferences, (text) => /"decimal_comma":false/.test(text));
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("files keep the point, drawings show what the page shows", async () => {
  const bench = await german({ acceptDownloads: true });
  const given = async (act) => {
    const [file] = await Promise.all([bench.page.waitForEvent("download"), act()]);
    return readFile(await file.path(), "utf8");
  };
  const chart = bench.page.locator(".save-chart.of-temper");
  await chart.locator("summary").click();
  const svg = await given(() => chart.getByRole("button", { name: "SVG" }).click());
  assert.match(svg, />[^<]*\d,\d/);
  assert.doesNotMatch(svg.replace(/<title>.*<\/title>/, ""), />[^<]*\d\.\d/);
  assert.match(svg, /="[^"]*\d\.\d/, "coordinates have points");
  await bench.go("Sources");
  const save = bench.page.getByRole("button", { name: /^Save the table as CSV/ }).first();
  const csv = await given(() => save.click());
  assert.match(csv, /\d\.\d/);
  assert.doesNotMatch(csv, /"\d+,\d+\D/);
  bench.assertNoTrouble();
  await bench.close();
});

test("where the comma cannot be loaded there are points, in fields too", async () => {
  const bench = await BenchPage.open(browser, {
    locale: "de-DE",
    before: (page) => page.route(/decimals/, (route) => route.abort()),
  });
  await bench.started();
  await bench.openWord("Section");
  assert.equal(plain(await bench.field("Spine").inputValue()), "4.0 mm");
  assert.equal(await decimals(bench, "0.5").getAttribute("aria-pressed"), "true");
  await bench.close();
});

test("what the user has named keeps its point", async () => {
  const bench = await german();
  const name = "2.5 mm knife";
  await bench.page.locator(".word button").first().click();
  await bench.page.getByRole("textbox", { name: "Name of the piece" }).fill(name);
  await bench.page.keyboard.press("Escape");
  await bench.shows(() => bench.page.locator(".word button").first().innerText(), name);
  /** Where a name is shown with a comma. */
  const changed = () =>
    bench.page.evaluate(() => {
      const texts = [...document.querySelectorAll("*")].flatMap((element) =>
        ["aria-label", "title", "placeholder"].map((word) => element.getAttribute(word) ?? "").concat(element.value ?? [], element.children.length ? [] : element.textContent),
      );
      return texts.filter((text) => `${text}`.includes("2,5 mm knife"));
    });
  /** In a text or, on the shelf, in the field that renames. */
  const shown = () =>
    bench.page.evaluate(() =>
      [document.querySelector("#app").innerText, ...[...document.querySelectorAll("input")].map((field) => field.value)].some((text) => text.includes("2.5 mm knife")),
    );
  await bench.keep();
  await bench.logRun();
  await bench.button("All runs").click();
  for (const place of ["Bench", "Decide", "Shelf", "Logbook"]) {
    await bench.go(place);
    await bench.until(shown, (is) => is, `the name in ${place}`);
    assert.deepEqual(await changed(), [], place);
    if (place === "Decide") {
      await bench.page.getByRole("checkbox", { name }).check();
      await bench.button("Compare").click();
      await bench.page.getByRole("columnheader", { name }).waitFor({ timeout: 60_000 });
      assert.deepEqual(await changed(), [], "side by side");
    }
  }
  await bench.go("Bench");
  await bench.toCard();
  await bench.page.getByRole("heading", { name }).waitFor();
  assert.deepEqual(await changed(), [], "card");
  assert.match(await bench.page.locator(".card").innerText(), /\d,\d/);
  bench.assertNoTrouble();
  await bench.close();
});

test("a comma that was chosen stays chosen where it cannot be loaded, and is there again once it can", async () => {
  let isCut = true;
  const kept = { [KEYS.preferences]: JSON.stringify({ format: "recalesce", version: 1, kind: "preferences", temperature_scale: "celsius", length_unit: "millimetre", decimal_comma: true, theme: "light" }) };
  const bench = await BenchPage.open(browser, {
    kept,
    before: (page) => page.route(/decimals/, (route) => (isCut ? route.abort() : route.continue())),
  });
  await bench.started();
  await bench.openWord("Section");
  assert.equal(plain(await bench.field("Spine").inputValue()), "4.0 mm");
  await bench.page.keyboard.press("Escape");
  // Another choice is kept beside it.
  await bench.pick("Theme", "shop");
  await bench.untilStored(KEYS.preferences, (text) => /"theme":\s*"dark"/.test(text) && /"decimal_comma":\s*true/.test(text));
  isCut = false;
  await bench.reload();
  await bench.openWord("Section");
  assert.equal(plain(await bench.field("Spine").inputValue()), "4,0 mm");
  await bench.close();
});
