// Your own quenchant: by its figures, by a pasted, dropped or picked probe curve; used and kept.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, PHONE, launch, plain } from "./bench_page.mjs";
import { curveText, readings } from "./probe_curve.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const FIND = "Find the heat transfer";
const USE = "Use this quenchant";

test("the list of quenchants leads to the panel, by keys alone", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.word("Quenchant").focus();
  await bench.page.keyboard.press("Enter");
  await bench.panel.waitFor();
  await bench.option("own").focus();
  await bench.page.keyboard.press("Enter");
  await bench.shows(() => bench.focused(), "Your own quenchant", "the focus");
  await bench.panel.waitFor({ state: "detached" });
  assert.equal(plain(await bench.word("Quenchant").textContent()), "medium oil");
  await bench.ownField("nickel-ball time").focus();
  await bench.page.keyboard.type("12,5");
  await bench.page.keyboard.press("Enter");
  await bench.ownButton(FIND).focus();
  await bench.page.keyboard.press("Enter");
  await bench.ownFound();
  // The button is still there, so the next key goes on from it.
  assert.equal(await bench.focused(), FIND);
  bench.assertNoTrouble();
  await bench.close();
});

test("figures give a quenchant that the route takes, keeps and shows again", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openOwn("its figures");
  await bench.typeOwn("nickel-ball time", "12.5");
  await bench.typeOwn("highest rate of the probe", "72");
  await bench.ownButton(FIND).click();
  await bench.ownFound();
  const figures = await bench.ownFigures();
  assert.deepEqual(
    figures.map(([name, given]) => [name, given]),
    [
      ["nickel-ball time", "12.5 s"],
      ["highest rate of the probe", "72.0 K/s"],
    ],
  );
  assert.ok(figures.every((row) => row[3] === "agrees"));
  assert.match((await bench.ownNotes()).join(" "), /as in .*oil.*known within ×1\.\d/);
  assert.deepEqual(await bench.accessibilityFaults(), []);

  await bench.ownField("Its name").fill("Barrel by the door");
  const before = await bench.sentences();
  await bench.ownButton(USE).click();
  const own = (route) => typeof route.quench.medium === "object";
  const { quench } = await bench.savedRoute(own);
  assert.equal(quench.medium.title, "Barrel by the door");
  assert.deepEqual(quench.medium.figures, { nickel_ball_s: 12.5, max_rate_k_per_s: 72 });
  assert.ok(quench.medium.h_band_factor > 1.2 && quench.medium.h_band_factor < 2);
  assert.equal(plain(await bench.word("Quenchant").textContent()), "Barrel by the door");
  assert.notDeepEqual(await bench.sentences(), before);

  await bench.reload();
  assert.equal(plain(await bench.word("Quenchant").textContent()), "Barrel by the door");
  // By its name it is in the list, in use and once another is.
  await bench.openWord("Quenchant");
  const listed = bench.options.filter({ hasText: "Barrel by the door" });
  assert.equal(await listed.getAttribute("aria-selected"), "true");
  await bench.option("oil_fast").click();
  await bench.savedRoute(({ quench }) => quench.medium === "oil_fast");
  await bench.shows(() => listed.getAttribute("aria-selected"), "false");
  await listed.click();
  assert.equal((await bench.savedRoute(own)).quench.medium.title, "Barrel by the door");
  assert.equal(await listed.count(), 1);
  await bench.page.keyboard.press("Escape");
  assert.deepEqual((await bench.savedRoute(own)).quench.medium, quench.medium);
  await bench.openOwn("its figures");
  assert.equal(plain(await bench.ownField("nickel-ball time").inputValue()), "12.5 s");
  assert.equal(await bench.ownField("Its name").inputValue(), "Barrel by the door");
  assert.deepEqual(await bench.ownFigures(), figures);

  // Rates are shown on the scale in use, and read on either.
  await bench.pick("Temperatures", "°F");
  const rate = async () => plain(await bench.ownField("highest rate of the probe").inputValue());
  await bench.shows(rate, "129.6 °F/s");
  await bench.typeOwn("highest rate of the probe", "180");
  await bench.shows(rate, "180.0 °F/s");
  await bench.typeOwn("highest rate of the probe", "80 °C/s");
  await bench.shows(rate, "144.0 °F/s");

  // A search goes by the shop, which says that it lacks it.
  await bench.go("Decide");
  const lacking = bench.page.getByText("“Barrel by the door”, the quenchant on the bench, is not in the shop.");
  await lacking.waitFor();
  await bench.page.getByRole("button", { name: "Add it" }).click();
  await bench.shows(() => lacking.count(), 0, "words of what the shop lacks");
  await bench.page.getByText("; Barrel by the door;", { exact: false }).waitFor();
  bench.assertNoTrouble();
  await bench.close();
});

test("what was typed and not yet used is there again after a reload", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openOwn("its figures");
  await bench.typeOwn("nickel-ball time", "14");
  await bench.typeOwn("bath in the test", "60 °C");
  await bench.openOwn("a probe curve");
  const curve = "time s; temperature °C\n0.0; 850\n0.5; 842\n1.0; 815";
  await bench.pasteOwn(curve);
  await bench.openOwn("a test coupon");
  await bench.typeOwn("centre, HRC", "58.5");
  await bench.reload();
  await bench.ownHead.click();
  // It opens where it was left.
  assert.equal(await bench.own.getByRole("button", { name: "a test coupon" }).getAttribute("aria-pressed"), "true");
  assert.equal(plain(await bench.ownField("centre, HRC").inputValue()), "58.5");
  assert.equal(plain(await bench.ownField("bath in the test").inputValue()), "60 °C");
  await bench.openOwn("a probe curve");
  assert.equal(await bench.ownCurve.inputValue(), curve);
  await bench.openOwn("its figures");
  assert.equal(plain(await bench.ownField("nickel-ball time").inputValue()), "14.0 s");
  bench.assertNoTrouble();
  await bench.close();
});

test("a quenchant of one's own goes out with the shelf and comes in again", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openOwn("its figures");
  await bench.typeOwn("nickel-ball time", "18");
  await bench.ownButton(FIND).click();
  await bench.ownFound();
  await bench.ownField("Its name").fill("Old drum");
  await bench.ownButton(USE).click();
  const { quench } = await bench.savedRoute((route) => route.quench.medium.title === "Old drum");
  await bench.keep();
  await bench.go("Shelf");
  const { text } = await bench.export();
  await bench.close();

  const other = await BenchPage.ready(browser);
  await other.go("Shelf");
  assert.equal(await other.import(text), "1 imported.");
  await other.shelfButton(0, "Put on the bench").click();
  const taken = await other.savedRoute((route) => route.quench.medium.title === "Old drum");
  assert.deepEqual(taken.quench.medium, quench.medium);
  other.assertNoTrouble();
  await other.close();
});

test("a figure that cannot be is told beside its field", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openOwn("its figures");
  await bench.ownButton(FIND).click();
  await bench.ownWrong.waitFor();
  assert.match(plain(await bench.ownWrong.textContent()), /^No figure tells the speed/);
  await bench.typeOwn("nickel-ball time", "900");
  await bench.shows(async () => plain(await bench.ownWrong.first().textContent()), "Between 1.3 s and 40.0 s.");
  await bench.typeOwn("nickel-ball time", "12");
  await bench.typeOwn("time of the probe to 600 °C", "20");
  await bench.typeOwn("time of the probe to 400 °C", "10");
  await bench.ownButton(FIND).click();
  await bench.ownWrong.waitFor();
  assert.match(plain(await bench.ownWrong.textContent()), /^Time of the probe to 400 °C: 10 s is outside/);
  assert.equal(await bench.ownField("time of the probe to 400 °C").getAttribute("aria-invalid"), "true");
  bench.assertNoTrouble();
  await bench.close();
});

test("a pasted curve is fitted while the page goes on, and drawn over the readings", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openOwn("a probe curve");
  await bench.pasteOwn(curveText());
  await bench.ownButton(FIND).click();
  // A drag in the middle of it is answered at once.
  await bench.press("soak", "ArrowUp");
  await bench.ownFound();
  const drawn = /as measured and as computed over \d+ s: ([\d.]+) K apart/;
  const summaries = await bench.until(
    () => bench.summaries(),
    (all) => drawn.test(all.join("\n")),
    "the probe is drawn",
  );
  const [, apart] = summaries.join("\n").match(drawn);
  assert.ok(Number(apart) < 4, `${apart} K apart`);
  assert.ok(summaries.some((text) => /^Heat transfer of the bath of 50 °C: at most \d+ W\/m²K/.test(text)));
  assert.equal((await bench.ownFigures()).length, 6);
  assert.ok((await bench.ownFigures()).every((row) => row[3] === "agrees"));
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("a dropped file of fifty thousand rows, with comma decimals, °F and no heading, is read and told", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openOwn("its figures");
  const comma = (number, decimals) => number.toFixed(decimals).replace(".", ",");
  const rows = readings({ every: 0.0008 }).map(([time, c]) => `${comma(time, 4)};${comma(1.8 * c + 32, 1)}`);
  assert.ok(rows.length >= 50_000, `${rows.length} rows`);
  await bench.dropOwn("curve.csv", rows.join("\r\n"));
  await bench.until(() => bench.ownCurve.inputValue(), (text) => text.length > 500_000, "the file is in the field");
  await bench.ownButton(FIND).click();
  await bench.ownFound();
  const notes = (await bench.ownNotes()).join("\n");
  assert.match(notes, /temperatures taken as °F/);
  assert.match(notes, /times taken as seconds/);
  assert.match(notes, /49999 readings averaged to \d+ points/);
  bench.assertNoTrouble();
  await bench.close();
});

test("a bad file is refused with the line and the reason, and what was found stays", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openOwn("a probe curve");
  await bench.pasteOwn(curveText());
  await bench.ownButton(FIND).click();
  await bench.ownFound();
  const lines = curveText().split("\n");
  const bad = [
    [lines.with(41, "0.780,about eight hundred").join("\n"), /^Line 42: “about eight hundred” is no temperature/],
    [[...lines.slice(0, 102), ...lines.slice(400)].join("\n"), /^Line 103: from \d+ to \d+ °C in one step/],
    [lines.slice(0, 200).join("\n"), /^The curve ends at \d+ °C; it has to go below 400 °C/],
    ["<h1>Not found</h1>", /^No line has two numbers/],
  ];
  for (const [text, reason] of bad) {
    await bench.pickOwn("curve.csv", text);
    await bench.shows(() => bench.ownCurve.inputValue(), text);
    await bench.ownButton(FIND).click();
    await bench.until(
      async () => plain((await bench.ownWrong.allTextContents()).join("")),
      (told) => reason.test(told),
      `${reason}`,
    );
    assert.equal((await bench.ownFigures()).length, 6);
  }
  // A refusal that stands is told on the scale that is chosen after it.
  await bench.pickOwn("curve.csv", lines.slice(0, 200).join("\n"));
  await bench.ownButton(FIND).click();
  const told = async () => plain((await bench.ownWrong.allTextContents()).join(""));
  await bench.until(told, (words) => /^The curve ends at/.test(words), "the end is refused");
  const scales = bench.page.getByRole("group", { name: "Temperatures", exact: true });
  await scales.getByRole("button", { name: "°F", exact: true }).click();
  await bench.until(told, (words) => /^The curve ends at \d+ °F; it has to go below 752 °F/.test(words), "told in °F");
  bench.assertNoTrouble();
  await bench.close();
});

test("a fit is cancelled, and the next one runs", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openOwn("a probe curve");
  await bench.pasteOwn(curveText());
  // In the page itself: a fit may be done before a press from outside arrives.
  await bench.page.evaluate(async (find) => {
    const named = (name) => [...document.querySelectorAll("button")].find((button) => button.textContent === name);
    named(find).click();
    while (!named("Cancel")) await new Promise(requestAnimationFrame);
    named("Cancel").click();
  }, FIND);
  await bench.shows(() => bench.ownWork(), "Stopped.");
  assert.equal(await bench.own.getByRole("progressbar").count(), 0);
  // A thread of the page's own, asked later, answers: the fit would have as well.
  await bench.quenchCells.first().waitFor();
  await bench.press("soak", "ArrowUp");
  assert.equal(await bench.ownWork(), "Stopped.");
  assert.equal((await bench.ownFigures()).length, 0);
  await bench.ownButton(FIND).click();
  await bench.ownFound();
  bench.assertNoTrouble();
  await bench.close();
});

test("on the phone the panel is as wide as the page", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  await bench.openOwn("a probe curve");
  await bench.pasteOwn(curveText());
  await bench.ownButton(FIND).click();
  await bench.ownFound();
  assert.ok((await bench.overflow()) <= 0);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("a quenchant from a file of an earlier version is shown by the name it never had", async () => {
  const medium = { h_w_m2k: [[70, 300], [265, 485], [480, 1900], [620, 1200], [850, 600]], bath_c: 50, radiation: false };
  const first = await BenchPage.ready(browser);
  await first.press("soak", "ArrowUp");
  const route = await first.savedRoute();
  await first.close();
  const saved = { format: "recalesce", version: 2, kind: "bench", routes: [{ id: 1, name: "x", route: { ...route, quench: { ...route.quench, medium } } }] };
  const bench = await BenchPage.ready(browser, { kept: { [KEYS.bench]: JSON.stringify(saved) } });
  assert.equal(plain(await bench.word("Quenchant").textContent()), "your own quenchant");
  await bench.openOwn("its figures");
  await bench.shows(async () => (await bench.ownNotes()).join(), "What decides the nose is known within ×1.30 either way.");
  bench.assertNoTrouble();
  await bench.close();
});

test("a test coupon gives a quenchant that the route takes, with what its hardness leaves open", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openOwn("a test coupon");
  await bench.ownList("Its steel").selectOption("1095");
  assert.equal(plain(await bench.ownField("soak").inputValue()), "803 °C");
  await bench.ownList("Quenchant nearest in kind").selectOption("oil_fast");
  await bench.typeOwn("its thickness", "5");
  await bench.ownButton(FIND).click();
  await bench.ownWrong.waitFor();
  assert.match(plain(await bench.ownWrong.textContent()), /^No hardness is given/);
  await bench.typeOwn("centre, HRC", "51");
  await bench.typeOwn("surface, HRC", "55");
  await bench.ownButton(FIND).click();
  await bench.ownFound();
  const rows = await bench.ownFigures();
  assert.deepEqual(
    rows.map(([what, given]) => [what, given]),
    [
      ["hardness at the centre", "51.0 HRC"],
      ["hardness at the surface", "55.0 HRC"],
    ],
  );
  assert.ok(rows.every((row) => /^×\d\.\d\d to ×\d\.\d\d$/.test(row[3])));
  assert.match((await bench.ownNotes()).join(" "), /shape of the curve is that of fast oil, its level ×1\.\d\d/);
  assert.deepEqual(await bench.accessibilityFaults(), []);

  await bench.ownField("Its name").fill("Coupon oil");
  await bench.ownButton(USE).click();
  const { quench } = await bench.savedRoute((route) => route.quench.medium.title === "Coupon oil");
  assert.ok(quench.medium.h_band_factor > 1.2 && quench.medium.h_band_factor < 4);

  // As hard as it gets in any oil: one side stays open, and that is told.
  await bench.typeOwn("centre, HRC", "65");
  await bench.typeOwn("surface, HRC", "");
  await bench.typeOwn("its thickness", "2");
  await bench.ownButton(FIND).click();
  await bench.until(() => bench.ownNotes(), (notes) => /the level is at least ×/.test(notes.join(" ")), "one side is open");
  assert.match((await bench.ownFigures())[0][3], /or more$/);
  bench.assertNoTrouble();
  await bench.close();
});
