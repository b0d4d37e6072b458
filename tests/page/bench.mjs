// Drags the handles, takes grades, and reports how the page keeps up: run it with `cargo xtask bench`.

import { BenchPage, launch } from "./bench_page.mjs";

const MOVES = 200;
/** Half the path of the pointer, in CSS pixels: there and back twice within the moves. */
const REACHES_PX = { soak: [0, 60], quench: [30, 0], temper: [60, 0] };
/** From few elements to many; each map is computed three times. */
const GRADES = ["1095", "52100", "4140", "O1", "A2", "D2", "S7"];
const TIMES = 3;

const quantile = (values, q) => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] ?? Number.NaN;
};
const report = (name, values_ms) => {
  const [least, median, p95, worst] = [0, 0.5, 0.95, 1].map((q) => quantile(values_ms, q).toFixed(1));
  console.log(`${name.padEnd(24)} least ${least} ms, median ${median} ms, p95 ${p95} ms, longest ${worst} ms (${values_ms.length})`);
};

/** Starts to note the time of each frame. Gives the way to end it and to read the times between. */
async function frames(page) {
  await page.evaluate(() => {
    window.frames_ms = [];
    let last;
    const frame = (now) => {
      if (last !== undefined) window.frames_ms.push(now - last);
      last = now;
      window.frameRequest = requestAnimationFrame(frame);
    };
    window.frameRequest = requestAnimationFrame(frame);
  });
  return () =>
    page.evaluate(() => {
      cancelAnimationFrame(window.frameRequest);
      return window.frames_ms;
    });
}

const browser = await launch();
try {
  const bench = await BenchPage.ready(browser);
  const { page } = bench;
  for (const [handle, [right, down]] of Object.entries(REACHES_PX)) {
    const [x, y] = await bench.placeOf(handle);
    const ended = await frames(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    const recompute_ms = [];
    for (let move = 1; move <= MOVES; move += 1) {
      const way = Math.sin((4 * Math.PI * move) / MOVES);
      await page.mouse.move(x + right * way, y + down * way);
      recompute_ms.push(await bench.recomputeMs());
    }
    await page.mouse.up();
    report(`${handle}: frame`, await ended());
    if (!recompute_ms.every(Number.isFinite)) throw new Error("the page does not tell how long a recompute took");
    report(`${handle}: recompute`, recompute_ms);
  }

  // From the press that takes the grade to its map; and the longest frame in between.
  await page.evaluate(() => {
    const map = document.querySelector(".map");
    const note = () => {
      if (map.ariaBusy === "true") window.mapAsked_ms = performance.now();
      else window.mapTook_ms = performance.now() - window.mapAsked_ms;
    };
    new MutationObserver(note).observe(map, { attributeFilter: ["aria-busy"] });
  });
  const took_ms = Object.fromEntries(GRADES.map((grade) => [grade, []]));
  const longest_ms = Object.fromEntries(GRADES.map((grade) => [grade, []]));
  for (let time = 0; time < TIMES; time += 1) {
    for (const grade of GRADES) {
      await bench.openWord("The steel");
      await bench.gradeSearch.fill(grade);
      await bench.option(grade).waitFor();
      await page.evaluate(() => delete window.mapTook_ms);
      const ended = await frames(page);
      await bench.option(grade).click();
      const map_ms = await bench.until(() => page.evaluate(() => window.mapTook_ms), Number.isFinite, `the map of ${grade}`);
      longest_ms[grade].push(Math.max(...(await ended())));
      took_ms[grade].push(map_ms);
      await page.keyboard.press("Escape");
    }
  }
  for (const grade of GRADES) {
    report(`${grade}: map`, took_ms[grade]);
    report(`${grade}: longest frame`, longest_ms[grade]);
  }
  // While the second thread searches: the page itself has nothing to do.
  const places = page.getByRole("navigation", { name: "Places" });
  await places.getByRole("button", { name: "Decide" }).click();
  const search = page.getByRole("button", { name: "Find routes", exact: true });
  await search.waitFor();
  const ended = await frames(page);
  await search.click();
  await page.getByText("Done.", { exact: true }).first().waitFor({ timeout: 120_000 });
  report("search: frame", await ended());
  bench.assertNoTrouble();
} finally {
  await browser.close();
}
