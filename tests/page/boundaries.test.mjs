// The soak dragged through every field of the phase map: no jump, no frame left out.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** Steels that pass from austenite and ferrite, or from two carbides, to austenite alone. */
const STEELS = {
  1045: { c: 0.45, mn: 0.75, si: 0.25 },
  52100: { c: 1.0, mn: 0.35, si: 0.25, cr: 1.45 },
  A2: { c: 1.0, mn: 0.7, si: 0.3, cr: 5.1, mo: 1.1, v: 0.2 },
};
/** Steepest that carbon in austenite changes with temperature, wt % per °C: along A3 and Acm about 0.007. */
const STEEPEST = 0.012;
/** Half of the last digit shown, twice. */
const ROUNDED = 0.011;

/** The open bench with a steel of this composition on it. */
async function benchOf(composition) {
  const example = await BenchPage.ready(browser);
  await example.press("soak", "ArrowUp", "ArrowDown");
  const kept = JSON.parse(await example.untilStored(KEYS.bench, () => true));
  await example.close();
  const { route } = kept.routes[0];
  delete route.grade;
  route.composition = composition;
  return BenchPage.ready(browser, { kept: { [KEYS.bench]: JSON.stringify(kept) } });
}

for (const [name, composition] of Object.entries(STEELS)) {
  test(`the soak of ${name} is dragged across every boundary without a jump in dissolved carbon`, async () => {
    const bench = await benchOf(composition);
    const [x, y] = await bench.placeOf("soak");
    const { page } = bench;
    const frames = await bench.watchSoakFrames();
    await page.mouse.move(x, y);
    await page.mouse.down();
    // Down into ferrite and carbide, then up to the top of the map, two pixels at a time.
    for (let down = 0; down <= 60; down += 4) await page.mouse.move(x, y + down);
    for (let down = 60; down >= -140; down -= 2) await page.mouse.move(x, y + down);
    await page.mouse.up();
    const seen = (await frames()).map(({ handle, map }) => ({
      temperature: Number.parseInt(plain(handle), 10),
      mapped: Number(plain(map).match(/^Phase map.*? at (\d+) °C/)[1]),
      // Below A1 nothing dissolves, and the map alone is told.
      carbon: Number(plain(map).match(/ ([\d.]+) of the [\d.]+ % carbon is dissolved/)?.[1]),
    }));
    assert.ok(seen.length > 100, `${seen.length} frames`);
    assert.ok(Math.max(...seen.map(({ temperature }) => temperature)) > 1000);
    assert.ok(seen.filter(({ carbon }) => Number.isFinite(carbon)).length > 80, "frames that tell what is dissolved");
    let last;
    for (const { temperature, mapped, carbon } of seen) {
      assert.equal(mapped, temperature, "map and handle show the same temperature");
      if (!Number.isFinite(carbon)) {
        last = undefined;
        continue;
      }
      if (last) {
        const way = Math.abs(temperature - last.temperature);
        assert.ok(
          Math.abs(carbon - last.carbon) <= ROUNDED + STEEPEST * way,
          `${last.carbon} % at ${last.temperature} °C, ${carbon} % at ${temperature} °C`,
        );
      }
      last = { temperature, carbon };
    }
    bench.assertNoTrouble();
    await bench.close();
  });
}
