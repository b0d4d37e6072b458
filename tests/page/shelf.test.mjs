// The shelf: what is kept, changed, taken off, carried out and in; and what a bad file may not do.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, exampleOf, launch } from "./bench_page.mjs";

let browser;
/** The route that the page opens with, as it is saved. */
let example;
before(async () => {
  browser = await launch();
  example = await exampleOf(browser);
});
after(() => browser.close());

const NAME = "marking knife, 52100";

/** A shelf with routes of these names, as it is kept or exported; the routes are the example's. */
const shelfOf = (route, ...names) =>
  JSON.stringify({
    format: "recalesce",
    version: 1,
    kind: "shelf",
    routes: names.map((name, index) => ({ id: index + 1, name, route })),
  });

/** The page at its shelf, with routes of these names on it. */
async function atShelf(...names) {
  const kept = names.length > 0 ? { [KEYS.shelf]: shelfOf(example, ...names) } : {};
  const bench = await BenchPage.ready(browser, { kept });
  await bench.go("Shelf");
  await bench.shows(async () => (await bench.names()).length, names.length);
  return bench;
}

const sameNames = (bench, names) =>
  bench.until(() => bench.names(), (now) => now.join("\n") === names.join("\n"), `names ${names}`);

test("an empty shelf says so and offers no export", async () => {
  const bench = await atShelf();
  assert.match(await bench.main.innerText(), /The shelf is empty/);
  assert.equal(await bench.button("Export to a file").isDisabled(), true);
  bench.assertNoTrouble();
  await bench.close();
});

test("a route is kept from the bench, twice under two names, and is there after a reload", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.keep();
  assert.equal(await bench.message(), `Kept on the shelf as “${NAME}”.`);
  await bench.press("soak", "ArrowUp");
  await bench.keep();
  await bench.go("Shelf");
  assert.equal(await bench.messages.count(), 0, "what only confirms is left behind");
  await sameNames(bench, [NAME, `${NAME} (2)`]);
  await bench.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes.length === 2);
  await bench.reload();
  await bench.started();
  await bench.go("Shelf");
  await sameNames(bench, [NAME, `${NAME} (2)`]);
  // Below a name stands what the route does, and not the name again.
  const [first, second] = await bench.keptLines();
  assert.equal(
    first,
    "4.0 mm at the spine; 5 steps before hardening; soak 830 °C for 12 min; medium oil; cold bath −75 °C for 1 h; temper 190 °C for 1 h, 190 °C for 1 h; for 61 to 63 HRC",
  );
  assert.notEqual(second, first);
  bench.assertNoTrouble();
  await bench.close();
});

test("a route of the shelf comes back onto the bench as it was", async () => {
  const bench = await BenchPage.ready(browser);
  const sentences = await bench.sentences();
  await bench.keep();
  await bench.press("soak", "PageUp", "PageUp");
  await bench.until(() => bench.sentences(), (now) => now[0] !== sentences[0], "the bench changes");
  await bench.go("Shelf");
  await bench.shelfButton(0, "Put on the bench").click();
  await bench.sentenceList.first().waitFor();
  assert.deepEqual(await bench.sentences(), sentences);
  assert.equal(await bench.valueOf("soak"), 830);
  bench.assertNoTrouble();
  await bench.close();
});

test("the open bench is restored after a reload", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.press("soak", "PageUp");
  await bench.press("quench", "PageDown");
  await bench.press("temper", "PageUp");
  const values = async () => Promise.all(["soak", "soak-time", "quench", "temper"].map((name) => bench.valueOf(name)));
  const [before, sentences] = [await values(), await bench.sentences()];
  await bench.savedRoute(({ tempers }) => tempers[0].temperature_c === 200);
  await bench.reload();
  assert.deepEqual(await values(), before);
  assert.deepEqual(await bench.sentences(), sentences);
  bench.assertNoTrouble();
  await bench.close();
});

test("a change just before the page is left is not lost", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.press("soak", "PageUp");
  await bench.shows(() => bench.valueOf("soak"), 840);
  await bench.reload();
  assert.equal(await bench.valueOf("soak"), 840);
  await bench.close();
});

test("a route is renamed; an empty, a taken and an endless name are refused and change nothing", async () => {
  const bench = await atShelf("one", "two");
  await bench.rename(0, "chisel");
  await sameNames(bench, ["chisel", "two"]);
  for (const name of ["", "   ", "two", "x".repeat(201)]) {
    await bench.rename(0, name);
    assert.match(await bench.message(), /\S/);
    assert.equal(await bench.messages.count(), 1);
    await sameNames(bench, ["chisel", "two"]);
    await bench.button("Dismiss").click();
  }
  await bench.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes[0].name === "chisel");
  bench.assertNoTrouble();
  await bench.close();
});

test("a name that is being written is kept when the next button is pressed", async () => {
  const bench = await atShelf("one", "two");
  await bench.nameField(0).fill("chisel");
  await bench.shelfButton(0, "Duplicate").click();
  await sameNames(bench, ["chisel", "chisel (2)", "two"]);
  bench.assertNoTrouble();
  await bench.close();
});

test("a route is duplicated, and moved up and down", async () => {
  const bench = await atShelf("one", "two", "three");
  await bench.shelfButton(1, "Duplicate").click();
  await sameNames(bench, ["one", "two", "two (2)", "three"]);
  await bench.shelfButton(3, "Move up").click();
  await sameNames(bench, ["one", "two", "three", "two (2)"]);
  await bench.shelfButton(0, "Move down").click();
  await sameNames(bench, ["two", "one", "three", "two (2)"]);
  assert.equal(await bench.shelfButton(0, "Move up").isDisabled(), true);
  assert.equal(await bench.shelfButton(3, "Move down").isDisabled(), true);
  await bench.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes[0].name === "two");
  await bench.reload();
  await bench.started();
  await bench.go("Shelf");
  await sameNames(bench, ["two", "one", "three", "two (2)"]);
  bench.assertNoTrouble();
  await bench.close();
});

test("the focus goes with a route that is moved by keys", async () => {
  const bench = await atShelf("one", "two", "three", "four");
  await bench.shelfButton(0, "Move down").press("Enter");
  await sameNames(bench, ["two", "one", "three", "four"]);
  await bench.page.keyboard.press("Enter");
  await sameNames(bench, ["two", "three", "one", "four"]);
  // At the end it goes no further: the way back has the focus.
  await bench.page.keyboard.press("Enter");
  await sameNames(bench, ["two", "three", "four", "one"]);
  assert.equal(await bench.focused(), "Move up");
  await bench.page.keyboard.press("Enter");
  await sameNames(bench, ["two", "three", "one", "four"]);
  bench.assertNoTrouble();
  await bench.close();
});

test("the focus is not lost when a route is taken off, and undo is a step away", async () => {
  const bench = await atShelf("one", "two");
  await bench.shelfButton(1, "Take off").press("Enter");
  await sameNames(bench, ["one"]);
  assert.notEqual(await bench.focused(), "", "the focus has fallen to the top of the page");
  await bench.close();
});

test("a route that is taken off comes back in its place by Undo", async () => {
  const bench = await atShelf("one", "two", "three");
  await bench.shelfButton(1, "Take off").click();
  await sameNames(bench, ["one", "three"]);
  assert.equal(await bench.message(), "“two” is off the shelf.");
  await bench.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes.length === 2);
  await bench.undoOfMessage.click();
  await sameNames(bench, ["one", "two", "three"]);
  assert.equal(await bench.messages.count(), 0);
  await bench.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes.length === 3);
  bench.assertNoTrouble();
  await bench.close();
});

test("Undo works from another place of the page as well, for a route and for an import", async () => {
  const bench = await atShelf("one", "two");
  await bench.shelfButton(0, "Take off").click();
  await bench.message();
  await bench.go("Bench");
  await bench.sentenceList.first().waitFor();
  await bench.undoOfMessage.click();
  await bench.go("Shelf");
  await sameNames(bench, ["one", "two"]);
  await bench.import(shelfOf(example, "three"));
  await bench.go("Bench");
  await bench.sentenceList.first().waitFor();
  await bench.undoOfMessage.click();
  await bench.go("Shelf");
  await sameNames(bench, ["one", "two"]);
  bench.assertNoTrouble();
  await bench.close();
});

test("Undo of an import keeps what was kept after it", async () => {
  const bench = await atShelf("one");
  await bench.import(shelfOf(example, "three"));
  await bench.shelfButton(0, "Duplicate").click();
  await sameNames(bench, ["one", "one (2)", "three"]);
  await bench.undoOfMessage.click();
  await sameNames(bench, ["one", "one (2)"]);
  await bench.close();
});

test("the exported file is one JSON text that gives the same shelf where it is imported", async () => {
  const bench = await atShelf("one", "two");
  const { name, text } = await bench.export();
  assert.match(name, /\.json$/);
  const file = JSON.parse(text);
  assert.equal(file.format, "recalesce");
  assert.equal(file.version, 9);
  assert.deepEqual(file.routes.map((item) => item.name), ["one", "two"]);
  assert.deepEqual(file.routes[0].route, example);
  bench.assertNoTrouble();
  await bench.close();

  const other = await atShelf();
  assert.match(await other.import(text), /^2 imported\.$/);
  await sameNames(other, ["one", "two"]);
  assert.equal((await other.export()).text, text);
  other.assertNoTrouble();
  await other.close();
});

test("an import adds to the shelf, numbers names that are taken, and can be undone", async () => {
  const bench = await atShelf("one", "two");
  assert.match(await bench.import(shelfOf(example, "two", "three")), /^2 imported/);
  await sameNames(bench, ["one", "two", "two (2)", "three"]);
  await bench.undoOfMessage.click();
  await sameNames(bench, ["one", "two"]);
  // The same file again: the picker must not think it unchanged.
  assert.match(await bench.import(shelfOf(example, "two", "three")), /^2 imported/);
  await sameNames(bench, ["one", "two", "two (2)", "three"]);
  bench.assertNoTrouble();
  await bench.close();
});

const changed = (change) => {
  const file = JSON.parse(shelfOf(example, "bad"));
  change(file.routes[0].route, file);
  return JSON.stringify(file);
};
const BAD_FILES = {
  "cut short": () => shelfOf(example, "one", "two").slice(0, 300),
  empty: () => "",
  "a picture": () => "\u0089PNG\r\n\u001a\n\0\0\0\rIHDR",
  "a list": () => "[]",
  null: () => "null",
  "another program's": () => '{"format":"something","version":1}',
  "of a newer version": () => changed((_, file) => (file.version = 99)),
  "of no version": () => changed((_, file) => delete file.version),
  "with a text as version": () => changed((_, file) => (file.version = "1")),
  "with routes that are no list": () => changed((_, file) => (file.routes = "none")),
  "with a text where a number belongs": () => changed((route) => (route.soak.temperature_c = "hot")),
  "with an absurd temperature": () => changed((route) => (route.soak.temperature_c = 1e9)),
  "with a negative time": () => changed((route) => (route.soak.time_min = -1)),
  "with a number beyond all": () => changed(() => {}).replace('"temperature_c":830', '"temperature_c":1e999'),
  "with no thickness": () => changed((route) => (route.section = { shape: "plate", thickness_mm: 0 })),
  "with an unknown shape": () => changed((route) => (route.section = { shape: "sphere", diameter_mm: 3 })),
  "with an unknown quenchant": () => changed((route) => (route.quench.medium = "quicksilver")),
  "with a field that is not known": () => changed((route) => (route.colour = "red")),
  "with a hundred tempers": () => changed((route) => (route.tempers = Array(100).fill(route.tempers[0]))),
  "with an endless name": () => shelfOf(example, "x".repeat(100_000)),
  "nested without end": () => "[".repeat(100_000),
  "of six megabytes": () => `{"format":"recalesce","padding":"${"x".repeat(6_000_000)}"}`,
};

for (const [what, text] of Object.entries(BAD_FILES)) {
  test(`a file ${what} is refused in one line and loses nothing`, async () => {
    const bench = await atShelf("one", "two");
    const before = await bench.stored(KEYS.shelf);
    const line = await bench.import(text());
    assert.equal(await bench.messages.count(), 1);
    assert.doesNotMatch(line, /\n/);
    assert.ok(line.length < 300, `${line.length} characters: ${line.slice(0, 300)}`);
    assert.match(line, /^Nothing was imported|^0 imported/);
    assert.deepEqual(await bench.names(), ["one", "two"]);
    // Whatever is written after it holds the same shelf.
    await bench.shelfButton(0, "Duplicate").click();
    await bench.untilStored(KEYS.shelf, (now) => now !== before && JSON.parse(now).routes.length === 3);
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("of a file with a good and a bad route the good one is taken, and the bad one named", async () => {
  const bench = await atShelf("one");
  const file = JSON.parse(shelfOf(example, "good", "bad"));
  file.routes[1].route = { ...example, soak: { temperature_c: 1e9, time_min: 5 } };
  const line = await bench.import(JSON.stringify(file));
  assert.match(line, /^1 imported\. Left out: route 2: .*soak temperature/);
  await sameNames(bench, ["one", "good"]);
  bench.assertNoTrouble();
  await bench.close();
});

test("a script in a name, a piece or a grade stays text", async () => {
  const bench = await atShelf();
  const attack = '<img src=x onerror="window.attacked=1"><script>window.attacked=1</script>';
  const route = { ...example, piece: attack, grade: attack };
  assert.match(await bench.import(shelfOf(route, attack)), /^1 imported/);
  await sameNames(bench, [attack]);
  await bench.shelfButton(0, "Put on the bench").click();
  await bench.sentenceList.first().waitFor();
  await bench.keep();
  await bench.go("Shelf");
  await bench.shelfButton(0, "Take off").click();
  assert.ok((await bench.message()).includes(attack));
  assert.equal(await bench.foreignElements.count(), 0);
  assert.equal(await bench.page.evaluate(() => window.attacked), undefined);
  bench.assertNoTrouble();
  await bench.close();
});

test("what two tabs keep is not lost to either", async () => {
  const bench = await atShelf("one");
  const other = new BenchPage(await bench.page.context().newPage(), bench.url);
  await other.page.goto(bench.url);
  await other.started();
  await other.keep();
  await other.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes.length === 2);
  await bench.shelfButton(0, "Duplicate").click();
  const text = await bench.untilStored(KEYS.shelf, (now) => now.includes("one (2)"));
  assert.deepEqual(JSON.parse(text).routes.map(({ name }) => name).sort(), [NAME, "one", "one (2)"].sort());
  await bench.close();
});
