// Parts of the program that are loaded when they are opened: in the background, at once where something
// is opened sooner, and again where the connection was gone.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PAGE_URL_BELOW, PHONE, launch } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const PARTS = "**/assets/parts/*";

/** The style sheet of the parts. */
const STYLE = "**/assets/later-*.css";

/** Holds the parts, or other files, back until the function that is returned is called. */
async function heldBack(page, files = PARTS) {
  let letGo;
  const free = new Promise((resolve) => {
    letGo = resolve;
  });
  await page.route(files, async (route) => {
    await free;
    await route.continue();
  });
  return letGo;
}

const partsLoaded = ({ page }) =>
  page.evaluate(() => {
    const names = performance.getEntriesByType("resource").map(({ name }) => name);
    return names.filter((name) => name.includes("/assets/parts/")).length;
  });

for (const url of [undefined, PAGE_URL_BELOW]) {
  test(`the page answers without its parts, and loads them then ${url ? "below a path" : ""}`, async () => {
    let letGo;
    const bench = await BenchPage.open(browser, {
      ...(url && { url }),
      before: async (page) => {
        letGo = await heldBack(page);
      },
    });
    await bench.started();
    await bench.sentenceList.first().waitFor();
    assert.equal((await bench.sentences()).length, 4);
    assert.equal(await bench.tableOfQuenches.count(), 0);
    letGo();
    await bench.tableOfQuenches.waitFor();
    await bench.mapArrives();
    assert.ok((await partsLoaded(bench)) > 0);
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("a word that is opened before its panel has come gets the focus into it then", async () => {
  let letGo;
  const bench = await BenchPage.open(browser, {
    before: async (page) => {
      letGo = await heldBack(page);
    },
  });
  await bench.started();
  await bench.openWord("Soak temperature");
  await bench.coming.first().waitFor();
  assert.deepEqual(await bench.accessibilityFaults(), []);
  letGo();
  await bench.shows(() => bench.whereFocusIs(), "panel");
  bench.assertNoTrouble();
  await bench.close();
});

test("a part that cannot be loaded is said where it was opened, and can be tried again", async () => {
  const bench = await BenchPage.open(browser, { before: (page) => page.route(PARTS, (route) => route.abort()) });
  await bench.started();
  const before = await bench.sentences();
  await bench.go("Logbook");
  await bench.partMissing.waitFor();
  assert.match(await bench.partMissing.innerText(), /^This part of the page could not be loaded\. Try again$/);
  assert.deepEqual(await bench.accessibilityFaults(), []);

  // What stands beside it says so too, and the route is as it was.
  await bench.button("Log a run").click();
  await bench.messages.filter({ hasText: "could not be loaded" }).waitFor();
  await bench.go("Bench");
  assert.deepEqual(await bench.sentences(), before);

  await bench.go("Logbook");
  await bench.partMissing.waitFor();
  await bench.page.unroute(PARTS);
  await bench.partMissing.getByRole("button", { name: "Try again" }).click();
  await bench.logbook.waitFor();
  await bench.shows(() => bench.whereFocusIs(), "main");
  await bench.button("Log a run").first().click();
  await bench.page.getByRole("heading", { level: 2 }).first().waitFor();
  await bench.close();
});

test("a part is not shown without its style, and the style moves nothing that stands already", async () => {
  for (const viewport of [undefined, PHONE]) {
    let letGo;
    const bench = await BenchPage.open(browser, {
      ...(viewport && { viewport }),
      // The page may ask for the style before it counts as loaded, which then waits for it.
      until: "commit",
      before: async (page) => {
        letGo = await heldBack(page, STYLE);
      },
    });
    await bench.started();
    await bench.sentenceList.first().waitFor({ state: "attached" });
    await bench.until(() => partsLoaded(bench), (count) => count > 0, "the parts are there");
    await bench.page.waitForTimeout(300);
    assert.equal(await bench.tableOfQuenches.count(), 0);
    // On a phone all is in one column, and what comes in a part above makes room for itself.
    const places = async () =>
      Object.entries(await bench.placesOnBench()).map(([name, [x, y, ...size]]) => [name, x, ...(viewport ? size : [y, ...size])]);
    const before = await places();
    assert.ok(before.length > 20);
    letGo();
    await bench.tableOfQuenches.waitFor();
    assert.deepEqual(await places(), before);
    bench.assertNoTrouble();
    await bench.close();
  }
});

test("a style that cannot be loaded is said as a part that cannot, and can be tried again", async () => {
  const bench = await BenchPage.open(browser, { before: (page) => page.route(STYLE, (route) => route.abort()) });
  await bench.started();
  await bench.go("Shelf");
  await bench.partMissing.waitFor();
  await bench.page.unroute(STYLE);
  await bench.partMissing.getByRole("button", { name: "Try again" }).click();
  await bench.page.getByRole("heading", { name: "Shelf" }).waitFor();
  await bench.close();
});
