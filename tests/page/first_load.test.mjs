// The page comes up whole, from its own host alone, and says so plainly when it cannot.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, PAGE_URL, PAGE_URL_BELOW, PHONE, launch } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

for (const [where, url] of [
  ["at the root of a host", PAGE_URL],
  ["below a path", PAGE_URL_BELOW],
]) {
  test(`the page loads without trouble ${where}`, async () => {
    const bench = await BenchPage.open(browser, { url });
    await bench.started();
    assert.equal(await bench.page.title(), "Recalesce");
    assert.equal(await bench.waiting.count(), 0);
    assert.equal(await bench.note.count(), 0);
    await bench.sentenceList.first().waitFor();
    const sentences = await bench.sentences();
    assert.equal(sentences.length, 4);
    for (const sentence of sentences) assert.match(sentence, /\d.*\.$/);
    assert.equal(await bench.messages.count(), 0);
    for (const colours of await bench.coloursOfPlots()) assert.ok(colours > 20, "every plot is painted");
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("the first visit writes nothing into the browser until something is changed", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.go("Shelf");
  await bench.go("Bench");
  assert.deepEqual(await bench.page.evaluate(() => Object.keys(localStorage)), []);
  assert.equal(await bench.page.evaluate(() => document.cookie), "");
  await bench.close();
});

test("the program does not open a link of another host by itself, nor name one in a resource", async () => {
  const bench = await BenchPage.ready(browser);
  for (const place of ["Shelf", "Sources", "Bench"]) await bench.go(place);
  const own = new URL(PAGE_URL).origin;
  const loaded = await bench.page.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name));
  assert.deepEqual(loaded.filter((name) => !name.startsWith(own) && !name.startsWith("blob:") && !name.startsWith("data:")), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("the face is the page's own font", async () => {
  const bench = await BenchPage.open(browser);
  await bench.started();
  const loaded = await bench.page.evaluate(async () => {
    const faces = await document.fonts.load("16px Archivo");
    return faces.map((face) => face.status);
  });
  assert.deepEqual(loaded, ["loaded"]);
  bench.assertNoTrouble();
  await bench.close();
});

test("the page has no accessibility faults, wide and on a phone, in both themes", async () => {
  for (const colorScheme of ["light", "dark"]) {
    for (const viewport of [undefined, PHONE]) {
      const bench = await BenchPage.open(browser, { colorScheme, ...(viewport && { viewport }) });
      await bench.started();
      assert.deepEqual(await bench.accessibilityFaults(), []);
      await bench.close();
    }
  }
});

test("the theme is that of the system until one is chosen", async () => {
  const preferring = (theme) =>
    JSON.stringify({ format: "recalesce", version: 1, kind: "preferences", temperature_scale: "celsius", length_unit: "millimetre", theme });
  for (const [colorScheme, stored, expected] of [
    ["dark", null, "dark"],
    ["light", null, "light"],
    ["light", preferring("dark"), "dark"],
    ["dark", preferring("light"), "light"],
    ["light", preferring("system"), "light"],
    ["dark", preferring("system"), "dark"],
    ["light", preferring("plaid"), "light"],
    ["light", "no preferences at all", "light"],
  ]) {
    const bench = await BenchPage.open(browser, { colorScheme, kept: stored ? { [KEYS.preferences]: stored } : {} });
    assert.equal(await bench.theme(), expected, `${colorScheme}, stored ${stored}`);
    await bench.close();
  }
});

test("the page starts where storage is denied", async () => {
  const bench = await BenchPage.open(browser, {
    before: (page) =>
      page.addInitScript(() => {
        const get = () => {
          throw new DOMException("denied", "SecurityError");
        };
        Object.defineProperty(window, "localStorage", { get });
        Object.defineProperty(window, "sessionStorage", { get });
      }),
  });
  await bench.started();
  bench.assertNoTrouble();
  await bench.close();
});

test("a program that does not arrive is said so, with a way to load it again", async () => {
  const bench = await BenchPage.open(browser, {
    before: (page) => page.route("**/*.wasm", (route) => route.abort()),
  });
  await bench.note.waitFor();
  assert.match(await bench.note.innerText(), /could not be loaded whole/);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  await bench.page.unroute("**/*.wasm");
  await bench.button("Reload").click();
  await bench.started();
  assert.equal(await bench.note.count(), 0);
  await bench.close();
});

test("a program that stops is said so once, and can start fresh", async () => {
  const bench = await BenchPage.open(browser, { url: `${PAGE_URL}#v1.something` });
  await bench.started();
  await bench.page.evaluate(() => {
    dispatchEvent(new CustomEvent("recalesce-panic", { detail: "index out of range" }));
    dispatchEvent(new CustomEvent("recalesce-panic", { detail: "and again" }));
  });
  assert.equal(await bench.note.count(), 1);
  assert.match(await bench.note.innerText(), /Something went wrong\. Your last saved work is kept\./);
  assert.deepEqual(await bench.accessibilityFaults(), []);

  // A page that is left while its parts are on their way says that they did not come.
  await bench.page.waitForLoadState("networkidle");
  await bench.button("Start fresh").click();
  await bench.page.waitForSelector("html[data-start=fresh][data-started]", { state: "attached" });
  assert.equal(new URL(bench.page.url()).hash, "");

  await bench.page.waitForLoadState("networkidle");
  await bench.page.reload();
  await bench.started();
  assert.equal(await bench.page.evaluate(() => document.documentElement.dataset.start), undefined);
  bench.assertNoTrouble();
  await bench.close();
});

test("without JavaScript the page says what it needs", async () => {
  const bench = await BenchPage.open(browser, { javaScriptEnabled: false });
  assert.match(await bench.note.innerText(), /needs JavaScript and WebAssembly/);
  await bench.waiting.waitFor({ state: "hidden" });
  await bench.close();
});
