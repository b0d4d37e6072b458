// Drags the soak handle and reports how the page keeps up: run it with `cargo xtask bench`.

import { BenchPage, launch } from "./bench_page.mjs";

const MOVES = 200;
/** Half the path of the pointer, in CSS pixels: there and back twice within the 200 moves. */
const REACH_PX = 60;

const quantile = (values, q) => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] ?? Number.NaN;
};
const report = (name, values_ms) => {
  const [median, p95, worst] = [0.5, 0.95, 1].map((q) => quantile(values_ms, q).toFixed(1));
  console.log(`${name.padEnd(12)} median ${median} ms, p95 ${p95} ms, longest ${worst} ms (${values_ms.length})`);
};

const browser = await launch();
try {
  const bench = await (await BenchPage.open(browser)).started();
  const { page } = bench;
  const handle = bench.handle("soak");
  if ((await handle.count()) === 0) throw new Error("the page has no handle named soak");
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;

  await page.evaluate(() => {
    const seen = { frames_ms: [], recompute_ms: [] };
    window.seen = seen;
    const bench = document.querySelector("[data-recompute-ms]");
    new MutationObserver(() => seen.recompute_ms.push(Number(bench.dataset.recomputeMs))).observe(bench, {
      attributeFilter: ["data-recompute-ms"],
    });
    let last;
    const frame = (now) => {
      if (last !== undefined) seen.frames_ms.push(now - last);
      last = now;
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let move = 1; move <= MOVES; move += 1) {
    await page.mouse.move(x, y + REACH_PX * Math.sin((4 * Math.PI * move) / MOVES));
  }
  await page.mouse.up();
  const { frames_ms, recompute_ms } = await page.evaluate(() => window.seen);

  report("frame", frames_ms);
  if (recompute_ms.length === 0) throw new Error("the drag recomputed nothing");
  report("recompute", recompute_ms);
  bench.assertNoTrouble();
} finally {
  await browser.close();
}
