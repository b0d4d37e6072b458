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
  const bench = await BenchPage.ready(browser);
  const { page } = bench;
  const [x, y] = await bench.placeOf("soak");

  await page.evaluate(() => {
    window.frames_ms = [];
    let last;
    const frame = (now) => {
      if (last !== undefined) window.frames_ms.push(now - last);
      last = now;
      window.frameRequest = requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
  await page.mouse.move(x, y);
  await page.mouse.down();
  const recompute_ms = [];
  for (let move = 1; move <= MOVES; move += 1) {
    await page.mouse.move(x, y + REACH_PX * Math.sin((4 * Math.PI * move) / MOVES));
    recompute_ms.push(await bench.recomputeMs());
  }
  await page.mouse.up();
  const frames_ms = await page.evaluate(() => {
    cancelAnimationFrame(window.frameRequest);
    return window.frames_ms;
  });

  report("frame", frames_ms);
  if (!recompute_ms.every(Number.isFinite)) throw new Error("the page does not tell how long a recompute took");
  report("recompute", recompute_ms);
  bench.assertNoTrouble();
} finally {
  await browser.close();
}
