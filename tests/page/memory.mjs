// Drags soak, quench and temper for some minutes and tells once a minute what the page holds in memory: run it
// against a served page, as `bench.mjs`, with the number of minutes as its argument. Not one of the tests: an
// hour of dragging takes an hour.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { loadavg } from "node:os";
import { BenchPage, launch } from "./bench_page.mjs";

const minutes = Number(process.argv[2] ?? 60);
assert.ok(minutes > 0, "minutes, as the argument");
/** Half the path of the pointer, CSS pixels; the time that one handle is held, and of one way there and back. */
const REACHES_PX = { soak: [0, 60], quench: [30, 0], temper: [60, 0] };
const HELD_MS = 10_000;
const PERIOD_MS = 2_000;

const MB = 1e6;
const mb = (bytes) => (bytes / MB).toFixed(1).padStart(7);

/** Resident memory of the process that shows the page, bytes; none where the system does not tell. */
async function resident(browser) {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send("SystemInfo.getProcessInfo");
  await session.detach();
  const sizes = processInfo
    .filter(({ type }) => type === "renderer")
    .map(async ({ id }) => {
      const status = await readFile(`/proc/${id}/status`, "utf8").catch(() => "");
      return 1024 * Number(/^VmRSS:\s*(\d+)/m.exec(status)?.[1] ?? Number.NaN);
    });
  // The one of the page is by far the largest.
  return Math.max(...(await Promise.all(sizes)));
}

/** Keeps the memory of each program that is started, before the page starts its own. */
const watchPrograms = (page) =>
  page.addInitScript(() => {
    window.memories = new Set();
    for (const name of ["instantiate", "instantiateStreaming"]) {
      const start = WebAssembly[name];
      WebAssembly[name] = async (...given) => {
        const started = await start.apply(WebAssembly, given);
        const { exports } = started.instance ?? started;
        for (const given of Object.values(exports)) if (given instanceof WebAssembly.Memory) window.memories.add(given);
        return started;
      };
    }
  });

const browser = await launch();
try {
  const bench = await BenchPage.ready(browser, { before: watchPrograms });
  await bench.quenchCells.first().waitFor();
  const { page } = bench;
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable");

  let moves = 0;
  const tell = async (minute) => {
    // What is left once the browser has cleared up.
    await session.send("HeapProfiler.collectGarbage");
    const { metrics } = await session.send("Performance.getMetrics");
    const metric = (name) => metrics.find((one) => one.name === name)?.value ?? Number.NaN;
    const wasm = await page.evaluate(() => [...window.memories].reduce((sum, { buffer }) => sum + buffer.byteLength, 0));
    const cells = [mb(metric("JSHeapUsedSize")), mb(wasm), mb(await resident(browser)), metric("Nodes"), metric("JSEventListeners"), moves, loadavg()[0].toFixed(1)];
    console.log(`| ${[minute, ...cells].join(" | ")} |`);
  };
  console.log("| minute | JS heap, MB | wasm, MB | resident, MB | nodes | listeners | moves | load |");
  console.log("|---|---|---|---|---|---|---|---|");
  await tell(0);
  const start = performance.now();
  const names = Object.keys(REACHES_PX);
  for (let minute = 1, turn = 0; minute <= minutes; turn += 1) {
    const name = names[turn % names.length];
    const [right, down] = REACHES_PX[name];
    const [x, y] = await bench.placeOf(name);
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const from = performance.now(); performance.now() - from < HELD_MS; moves += 1) {
      const way = Math.sin((2 * Math.PI * (performance.now() - from)) / PERIOD_MS);
      await page.mouse.move(x + right * way, y + down * way);
    }
    // Back where it was, so that all turns are alike.
    await page.mouse.move(x, y);
    await page.mouse.up();
    for (; minute <= minutes && performance.now() - start >= 60_000 * minute; minute += 1) await tell(minute);
  }
  bench.assertNoTrouble();
} finally {
  await browser.close();
}
