// The logbook of a piece that does not harden through: each reading beside what is predicted where it was read.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { BenchPage, launch } from "./bench_page.mjs";

const SAVED = await readFile(new URL("../saved/v9_logbook.json", import.meta.url), "utf8");

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

test("a reading at the cutting edge is laid beside the edge's prediction", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.go("Logbook");
  await bench.page.getByText("Nothing is logged yet").waitFor();
  await bench.handLogbook(SAVED);
  await bench.incoming.getByRole("button", { name: "Add the new" }).click();
  const [row] = await bench.runsAre(4);
  // Newest first; a list tells the edge.
  assert.deepEqual(row.slice(6), ["61.0 ± 2.0, cutting edge", "60.5", "−0.5"]);
  await bench.openRun(0);
  const came = bench.page.getByText(/^Three quarters up predicted/);
  const said = (await came.innerText()).replaceAll("\u{a0}", " ");
  assert.equal(
    said,
    "Three quarters up predicted 50.0, 43–55 HRC by model 5; measured 44.5 HRC: −5.5, inside the band. " +
      "At the cutting edge predicted 61.0 ± 2.0 HRC; measured 60.5 HRC: −0.5, inside the band. " +
      "Say where each was read: “edge” or “spine”. Read elsewhere, and compared with nothing: face of the spine.",
  );
  // The first row is the reading at the edge.
  const place = bench.page.getByLabel("Place", { exact: true }).first();
  await place.fill("spine");
  await place.press("Tab");
  await bench.page.getByText(/predicted 61\.0\s±\s2\.0\sHRC; not measured after the last step yet/).waitFor();
  await bench.page.getByText(/measured 52\.5\sHRC: \+2\.5, inside the band/).waitFor();
  bench.assertNoTrouble();
  await bench.close();
});
