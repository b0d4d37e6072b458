// One chart of a route by itself, by its address: in a frame of another page, and leaving the reader's
// bench alone.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, PAGE_URL, PAGE_URL_BELOW, PHONE, launch } from "./bench_page.mjs";

let browser, link;
const CHARTS = ["route", "soak", "quench", "temper", "phases"];

before(async () => {
  browser = await launch();
  const bench = await BenchPage.ready(browser, { permissions: ["clipboard-read", "clipboard-write"] });
  await bench.press("soak", "ArrowUp");
  await bench.go("Shelf");
  await bench.button("Copy a link to it").click();
  await bench.messages.filter({ hasText: "on the clipboard" }).waitFor();
  const copied = await bench.page.evaluate(() => navigator.clipboard.readText());
  link = new URL(copied).hash;
  await bench.close();
});
after(() => browser.close());

for (const chart of CHARTS) {
  test(`the chart “${chart}” stands alone, without handles, wide and on a phone, light and dark`, async () => {
    for (const [viewport, colorScheme] of [[{ width: 640, height: 480 }, "light"], [PHONE, "dark"]]) {
      const bench = await BenchPage.open(browser, { url: `${PAGE_URL_BELOW}${link}&show=${chart}`, viewport, colorScheme });
      await bench.embedded.waitFor();
      await bench.embedded.locator(chart === "phases" ? "table" : "canvas[role=img]").first().waitFor();
      assert.equal(await bench.page.locator(".handle, header, nav").count(), 0);
      assert.match(await bench.embedded.innerText(), /marking knife of 52100; 4\.0\smm at the spine; 5 steps before hardening; soak 83\d/);
      assert.match(await bench.embedded.getByRole("link").getAttribute("href"), /#route=[\w.-]+$/);
      assert.deepEqual(await bench.accessibilityFaults(), []);
      const wide = await bench.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(wide <= 0, `${chart} is ${wide} px too wide`);
      bench.assertNoTrouble();
      await bench.close();
    }
  });
}

test("the reader's own bench and shelf stay as they are, also those that cannot be read", async () => {
  for (const text of ["no bench at all", ""]) {
    const kept = text ? { [KEYS.bench]: text, [KEYS.shelf]: text } : {};
    const bench = await BenchPage.open(browser, { url: `${PAGE_URL}${link}&show=quench`, kept, serviceWorkers: "allow" });
    await bench.embedded.locator("canvas[role=img]").waitFor();
    await bench.page.waitForTimeout(800);
    const stored = await bench.page.evaluate(async () => [{ ...localStorage }, await caches.keys(), (await indexedDB.databases()).length]);
    assert.deepEqual(stored, [kept, [], 0]);
    await bench.close();
  }
});

test("an address that asks for what there is not is refused in one line", async () => {
  const letters = link.replace("#route=", "");
  for (const [text, says] of [
    [`${letters}&show=all`, /asks for a chart that there is none of/],
    [`${letters}&show=<script>alert(1)</script>`, /asks for a chart that there is none of/],
    [`${letters}&show=quench&x=1`, /asks for a chart that there is none of/],
    [`${letters.slice(0, -4)}&show=quench`, /damaged or cut short/],
    ["&show=quench", /no link to a route/],
    ["99.AAAA&show=quench", /version 99/],
  ]) {
    const bench = await BenchPage.open(browser, { url: `${PAGE_URL}#route=${text}` });
    const line = bench.embedded.getByRole("alert");
    await line.waitFor();
    assert.match(await line.innerText(), says);
    assert.equal(await bench.page.locator("canvas").count(), 0);
    assert.deepEqual(await bench.page.evaluate(() => ({ ...localStorage })), {});
    bench.assertNoTrouble();
    await bench.close();
  }
});

test("the link and the text for a web page are copied, and show the chart in a frame there", async () => {
  const bench = await BenchPage.ready(browser, { permissions: ["clipboard-read", "clipboard-write"] });
  await bench.go("Shelf");
  await bench.page.getByText("One chart of the bench's route").click();
  assert.deepEqual(await bench.accessibilityFaults(), []);
  await bench.button("Copy link: Quench").click();
  await bench.messages.filter({ hasText: "The link to the chart is on the clipboard." }).waitFor();
  const copied = () => bench.page.evaluate(() => navigator.clipboard.readText());
  assert.match(await copied(), /#route=[\w.-]+&show=quench$/);
  await bench.button("Copy text for a web page: Soak").click();
  await bench.messages.filter({ hasText: "The text for a web page is on the clipboard." }).waitFor();
  const frame = await copied();
  assert.match(frame, /^<iframe src="[^"]+&amp;show=soak" title="Soak: [^"]+" /);

  // On a page of the same host, which the browser lets have a frame.
  const other = await bench.page.context().newPage();
  await other.route("**/course.html", (route) => route.fulfill({ contentType: "text/html", body: `<!doctype html><title>Course</title>${frame}` }));
  await other.goto(new URL("course.html", PAGE_URL).href);
  await other.frameLocator("iframe").locator("canvas[role=img]").waitFor();
  await bench.close();
});

test("an address that shows a chart, typed where the bench is open, shows it, and back again the bench is as it was", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.press("soak", "ArrowUp", "ArrowUp");
  await bench.page.evaluate((hash) => {
    location.hash = hash;
  }, `${link}&show=temper`);
  await bench.embedded.locator("canvas[role=img]").waitFor();
  await bench.page.goto(PAGE_URL);
  await bench.started();
  const { route } = JSON.parse(await bench.page.evaluate((key) => localStorage.getItem(key), KEYS.bench)).routes[0];
  assert.ok(route.soak.temperature_c > 830);
  await bench.close();
});
