// Everything is within reach of keys and fingers, and seen where it has the focus: also in the colours
// that a system forces and where more contrast is asked for.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, launch } from "./bench_page.mjs";

/** Least side of what is pressed, and of the main handles, CSS pixels. */
const TARGET_PX = 24;
const HANDLE_PX = 44;
/** Least contrast of a ring with what it is drawn on (WCAG 2.2, 1.4.11). */
const RING_CONTRAST = 3;

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const PLACES = ["Bench", "Decide", "Experiments", "Shelf", "Logbook", "Sources"];

/** Goes to a place and waits until all of it is there. */
async function at(bench, place) {
  await bench.go(place);
  // Its cells come from the second thread.
  if (place === "Bench") await bench.quenchCells.first().waitFor({ state: "attached" });
  await bench.until(() => bench.coming.count(), (count) => count === 0, place);
}

for (const [mode, options] of [
  ["in forced colours", { forcedColors: "active", colorScheme: "light" }],
  ["with more contrast, in the dark, on a phone", { contrast: "more", colorScheme: "dark", viewport: PHONE }],
]) {
  test(`every handle, button and field is reached by Tab with a ring, and what is written is read, ${mode}`, async () => {
    const bench = await BenchPage.ready(browser, options);
    await bench.keep();
    // What can be undone is noted once the hand rests.
    await bench.button("Undo the last change of bench or shelf").and(bench.page.locator(":enabled")).waitFor();
    const faults = [];
    for (const place of PLACES) {
      await at(bench, place);
      faults.push(...(await bench.tabThrough(RING_CONTRAST)).map((fault) => `${place}: ${fault}`));
      const pale = await bench.accessibilityFaults({ runOnly: { type: "rule", values: ["color-contrast"] } });
      faults.push(...pale.map((fault) => `${place}: ${fault}`));
    }
    assert.deepEqual(faults, []);
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("what is pressed is 24 px each way, and a handle 44 px", async () => {
  for (const options of [{}, { viewport: PHONE, hasTouch: true, isMobile: true }]) {
    const bench = await BenchPage.ready(browser, options);
    await bench.keep();
    for (const place of PLACES) {
      await at(bench, place);
      assert.deepEqual(await bench.smallTargets(TARGET_PX), [], place);
    }
    await bench.go("Bench");
    for (const handle of await bench.handles.all()) {
      const { width, height } = (await handle.boundingBox()) ?? { width: HANDLE_PX, height: HANDLE_PX };
      const name = await handle.getAttribute("aria-label");
      assert.ok(Math.min(width, height) >= HANDLE_PX, `${name}: ${width} × ${height}`);
    }
    await bench.close();
  }
});
