// The card on the page and on paper, its code, and the link that it carries.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import jsQR from "jsqr";
import { BenchPage, KEYS, PAGE_URL, PHONE, benchOf, exampleOf, launch } from "./bench_page.mjs";

let browser;
/** The route that the page opens with, as it is saved. */
let example;
before(async () => {
  browser = await launch();
  example = await exampleOf(browser);
});
after(() => browser.close());

/** The page at its card, with a route on the bench. */
async function atCard(route, options = {}) {
  const kept = route ? { [KEYS.bench]: benchOf(route) } : {};
  const bench = await BenchPage.ready(browser, { kept, ...options });
  await bench.toCard();
  return bench;
}

/** A route with so many steps before hardening. */
const withPrior = (count) => ({
  ...example,
  prior: Array.from({ length: count }, (_, i) => ({
    work: i === 0 ? { kind: "forge", finish_c: 900, heats: 2 } : { kind: i % 2 ? "normalise" : "refine" },
    temperature_c: 1050 - 20 * i,
    time_min: 10,
    cooling: { way: "medium", medium: "air_still" },
  })),
});

test("the card has a row for each step, and what it brings stands below it", async () => {
  const bench = await atCard(withPrior(3));
  assert.deepEqual(await bench.cardSteps(), [
    "Forge",
    "Normalise",
    "Refine",
    "Soak",
    "Quench",
    "Test",
    "Cold",
    "Temper 1",
    "Temper 2",
  ]);
  const text = await bench.card.innerText();
  for (const words of ["carbon monoxide", "Dry ice", "flash point", "local codes", "Hardened height"]) {
    assert.ok(text.includes(words), words);
  }
  const below = (step) =>
    bench.card.locator(".steps tr", { has: bench.page.locator("th", { hasText: step }) }).locator("+ .mind").innerText();
  assert.match(await below("Forge"), /carbon monoxide/);
  assert.match(await below("Cold"), /Dry ice/);
  assert.deepEqual(await bench.accessibilityFaults(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("the card is within a phone's window, and black on white in the dark", async () => {
  const bench = await atCard(undefined, { viewport: PHONE, colorScheme: "dark" });
  const { scrollWidth, ground } = await bench.page.evaluate(() => ({
    scrollWidth: document.documentElement.scrollWidth,
    ground: getComputedStyle(document.querySelector(".card")).backgroundColor,
  }));
  assert.equal(scrollWidth, PHONE.width);
  assert.equal(ground, "rgb(255, 255, 255)");
  assert.deepEqual(await bench.accessibilityFaults(), []);
  await bench.close();
});

/** Pages of a PDF: Chromium writes each as an object in the clear. */
const pagesOf = (pdf) => pdf.toString("latin1").match(/\/Type\s*\/Page\b/g).length;

for (const format of ["A4", "Letter"]) {
  test(`on ${format} the card is one page, and a long one breaks between its rows`, async () => {
    const short = await atCard();
    await short.shows(() => short.page.evaluate(() => window.printed), 1);
    assert.equal(pagesOf(await short.page.pdf({ format })), 1);
    short.assertNoTrouble();
    await short.close();
    const long = await atCard(withPrior(10));
    assert.ok(pagesOf(await long.page.pdf({ format })) > 1);
    await long.page.emulateMedia({ media: "print" });
    const loose = await long.page.locator(".card tr").evaluateAll((rows) =>
      rows.filter((row) => getComputedStyle(row).breakInside !== "avoid").length,
    );
    assert.equal(loose, 0);
    const head = await long.page.locator(".steps thead").evaluate((head) => getComputedStyle(head).display);
    assert.equal(head, "table-header-group");
    await long.close();
  });
}

test("the card of each grade's starting route is one page", async () => {
  const bench = await BenchPage.ready(browser);
  const long = [];
  for (const grade of ["A2", "D2", "S1", "S7", "440C", "142WV13", "75Ni8", "L6"]) {
    await bench.go("Bench");
    await bench.takeGrade(grade);
    await bench.toCard();
    for (const format of ["A4", "Letter"]) {
      const pages = pagesOf(await bench.page.pdf({ format }));
      if (pages > 1) long.push(`${grade} on ${format}: ${pages}`);
    }
  }
  assert.deepEqual(long, []);
  bench.assertNoTrouble();
  await bench.close();
});

test("only the card goes to paper, and its charts as vectors", async () => {
  const bench = await atCard();
  await bench.page.emulateMedia({ media: "print" });
  for (const other of [".head", ".foot", ".card-place .actions"]) {
    assert.equal(await bench.page.locator(other).isVisible(), false, other);
  }
  assert.equal(await bench.card.locator("canvas, img").count(), 0);
  assert.ok((await bench.card.locator("svg[role=img]").count()) >= 3);
  await bench.close();
});

test("the code is that of a link which brings the route", async () => {
  const bench = await atCard(withPrior(3), { deviceScaleFactor: 4 });
  const png = (await bench.card.locator(".qr").screenshot()).toString("base64");
  const { data, width, height } = await bench.page.evaluate(async (png) => {
    const picture = new Image();
    picture.src = `data:image/png;base64,${png}`;
    await picture.decode();
    const { width, height } = picture;
    const canvas = Object.assign(document.createElement("canvas"), { width, height });
    const context = canvas.getContext("2d");
    context.drawImage(picture, 0, 0);
    return { data: [...context.getImageData(0, 0, width, height).data], width, height };
  }, png);
  const address = jsQR(Uint8ClampedArray.from(data), width, height).data;
  assert.ok(address.startsWith(`${PAGE_URL}#route=9.`), address);
  await bench.close();
  const opened = await BenchPage.ready(browser, { url: address });
  await opened.toCard();
  assert.equal((await opened.cardSteps()).length, 9);
  opened.assertNoTrouble();
  await opened.close();
});

test("a link puts its route on the bench and keeps the one before; both can be had back", async () => {
  const giver = await BenchPage.ready(browser);
  await giver.press("soak", "PageUp");
  await giver.shows(() => giver.valueOf("soak"), 840);
  const link = await giver.link();
  await giver.close();
  const before = { ...example, piece: "chisel", soak: { ...example.soak, temperature_c: 815 } };
  const bench = await BenchPage.ready(browser, { url: link, kept: { [KEYS.bench]: benchOf(before) } });
  await bench.shows(() => bench.valueOf("soak"), 840);
  assert.match(await bench.message(), /the one before is on the shelf/);
  assert.equal(await bench.page.evaluate(() => location.hash), "");
  await bench.savedRoute(({ soak }) => soak.temperature_c === 840);
  await bench.undoOfMessage.click();
  await bench.shows(() => bench.valueOf("soak"), 815);
  bench.assertNoTrouble();
  await bench.close();
});

test("a link that comes into the open page is taken in as well", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.press("soak", "PageUp");
  await bench.shows(() => bench.valueOf("soak"), 840);
  const link = await bench.link();
  await bench.press("soak", "PageUp");
  await bench.shows(() => bench.valueOf("soak"), 850);
  await bench.page.evaluate((hash) => (location.hash = hash), new URL(link).hash);
  await bench.shows(() => bench.valueOf("soak"), 840);
  bench.assertNoTrouble();
  await bench.close();
});

test("hostile and damaged links change nothing and are told in a sentence", async () => {
  for (const [hash, told] of [
    ["#route=", /no link to a route/],
    ["#route=6.%3Cscript%3Ealert(1)%3C/script%3E", /damaged/],
    ["#route=6.AAAAAAAA", /damaged/],
    ["#route=999.AAAA", /version 999/],
    [`#route=6.${"A".repeat(20_000)}`, /at most 16000/],
  ]) {
    const bench = await BenchPage.ready(browser, { url: PAGE_URL + hash });
    assert.match(await bench.message(), told);
    assert.equal(await bench.valueOf("soak"), 830);
    bench.assertNoTrouble();
    await bench.close();
  }
});
