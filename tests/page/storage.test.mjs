// What the browser keeps may be denied, full, broken or from a newer version: the page starts, says
// one line, goes on, and nothing is lost.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, PHONE, WIDE, asideOf, launch } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const denied = (page) =>
  page.addInitScript(() => {
    const get = () => {
      throw new DOMException("denied", "SecurityError");
    };
    Object.defineProperty(window, "localStorage", { get });
    Object.defineProperty(window, "sessionStorage", { get });
  });
const full = (page) =>
  page.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
const absent = (page) =>
  page.addInitScript(() => Object.defineProperty(window, "localStorage", { get: () => null }));

for (const [what, prepare, said] of [
  ["denied", denied, /keeps nothing/],
  ["absent", absent, /keeps nothing/],
  ["full", full, /store is full/],
]) {
  test(`where storage is ${what} the page works and says so in one line`, async () => {
    const bench = await BenchPage.ready(browser, { before: prepare });
    assert.equal((await bench.sentences()).length, 4);
    await bench.press("soak", "PageUp");
    assert.match(await bench.message(), said);
    assert.equal(await bench.messages.count(), 1);
    assert.equal(await bench.valueOf("soak"), 840);
    // The shelf lives as long as the page, and can be carried away.
    await bench.keep();
    await bench.go("Shelf");
    await bench.shows(async () => (await bench.names()).length, 1);
    assert.equal(JSON.parse((await bench.export()).text).routes.length, 1);
    await bench.pick("Theme", "shop");
    assert.equal(await bench.theme(), "dark");
    bench.assertNoTrouble();
    await bench.close();
  });
}

for (const [what, prepare] of [["denied", denied], ["absent", absent]]) {
  test(`where storage is ${what} it is said in one line before anything is done`, async () => {
    const bench = await BenchPage.ready(browser, { before: prepare });
    assert.match(await bench.message(), /keeps nothing/);
    assert.equal(await bench.messages.count(), 1);
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("where storage is full the line is said again after it was dismissed at most once a change", async () => {
  const bench = await BenchPage.ready(browser, { before: full });
  await bench.press("soak", "ArrowUp");
  await bench.message();
  await bench.press("soak", "ArrowUp", "ArrowUp", "ArrowUp");
  assert.equal(await bench.messages.count(), 1);
  bench.assertNoTrouble();
  await bench.close();
});

const BROKEN = {
  "cut short": '{"format":"recalesce","version":1,"kind":"bench","routes":[{"id":1,"na',
  empty: "",
  "no JSON": "hello",
  "a number": "42",
  "of another shape": '{"format":"recalesce","version":1,"kind":"bench","routes":{}}',
  "of a newer version": '{"format":"recalesce","version":99,"kind":"shelf","benches":[]}',
};

for (const [what, text] of Object.entries(BROKEN)) {
  for (const key of [KEYS.bench, KEYS.shelf]) {
    test(`${key} ${what}: the page starts, says one line and sets the text aside`, async () => {
      const bench = await BenchPage.ready(browser, { kept: { [key]: text } });
      assert.match(await bench.message(), /set aside/);
      assert.equal(await bench.messages.count(), 1);
      assert.equal((await bench.sentences()).length, 4);
      assert.equal(await bench.stored(asideOf(key)), text);
      // What is kept afterwards takes its place; what was set aside stays.
      await bench.press("soak", "ArrowUp");
      await bench.keep();
      await bench.untilStored(key, (now) => now !== text);
      assert.equal(await bench.stored(asideOf(key)), text);
      await bench.reload();
      assert.equal(await bench.messages.count(), 0);
      assert.equal(await bench.valueOf("soak"), 831);
      assert.equal(await bench.stored(asideOf(key)), text);
      bench.assertNoTrouble();
      await bench.close();
    });
  }
}

test("a text that was set aside is not lost when a second one has to be", async () => {
  const first = "the first shelf that could not be read";
  const bench = await BenchPage.ready(browser, { kept: { [KEYS.shelf]: "the second", [asideOf(KEYS.shelf)]: first } });
  await bench.message();
  const all = await bench.page.evaluate(() => Object.values(localStorage));
  assert.ok(all.includes(first) && all.includes("the second"), JSON.stringify(all));
  await bench.close();
});

test("both broken at once are both told", async () => {
  const bench = await BenchPage.ready(browser, { kept: { [KEYS.bench]: "{", [KEYS.shelf]: "{" } });
  const line = await bench.message();
  assert.match(line, /bench/i);
  assert.match(line, /shelf/i);
  await bench.close();
});

test("a shelf of which one route is bad shows the others and sets the text aside", async () => {
  const probe = await BenchPage.ready(browser);
  await probe.keep();
  const good = await probe.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes.length === 1);
  await probe.close();
  const file = JSON.parse(good);
  file.routes.push({ ...file.routes[0], id: 2, name: "bad", route: { piece: "nothing" } });
  const text = JSON.stringify(file);

  const bench = await BenchPage.ready(browser, { kept: { [KEYS.shelf]: text } });
  assert.match(await bench.message(), /^(1 route|One route) /);
  assert.equal(await bench.stored(asideOf(KEYS.shelf)), text);
  await bench.go("Shelf");
  assert.equal((await bench.names()).length, 1);
  bench.assertNoTrouble();
  await bench.close();
});

test("broken preferences are nothing but the defaults", async () => {
  for (const text of ["{", "", "null", '{"format":"recalesce","version":99,"kind":"preferences"}']) {
    const bench = await BenchPage.ready(browser, { kept: { [KEYS.preferences]: text } });
    assert.equal(await bench.wordsOf("soak"), "830 °C");
    bench.assertNoTrouble();
    await bench.close();
  }
});

test("other pages' things in the same storage are left alone", async () => {
  const kept = { theme: "mine", "other.shelf": "[1]" };
  const bench = await BenchPage.ready(browser, { kept });
  await bench.press("soak", "ArrowUp");
  await bench.keep();
  await bench.pick("Theme", "shop");
  await bench.untilStored(KEYS.preferences, (text) => /dark/.test(text));
  for (const [key, value] of Object.entries(kept)) assert.equal(await bench.stored(key), value);
  const keys = await bench.page.evaluate(() => Object.keys(localStorage));
  assert.deepEqual(keys.filter((key) => !(key in kept) && !key.startsWith("recalesce.")), []);
  await bench.close();
});

test("what cannot be read and finds no room to be set aside stays until it is saved as a file", async () => {
  const noRoomAside = (page) =>
    page.addInitScript(() => {
      const set = Storage.prototype.setItem;
      Storage.prototype.setItem = function (key, text) {
        if (/set-aside/.test(key)) throw new DOMException("full", "QuotaExceededError");
        return set.call(this, key, text);
      };
    });
  for (const [key, viewport] of [[KEYS.bench, WIDE], [KEYS.shelf, PHONE]]) {
    const bench = await BenchPage.ready(browser, { kept: { [key]: "{" }, before: noRoomAside, viewport });
    assert.match(await bench.message(), /could not be read: .* no room to set it aside: it stays as it is/);
    assert.ok(await bench.noticeIsInside());
    const change = () => (key === KEYS.bench ? bench.press("soak", "ArrowUp") : bench.keep());
    await change();
    await bench.until(() => bench.message(), (line) => /Not kept: .* Save it as a file first/.test(line), "what is not kept");
    // Also over a reload.
    await bench.reload();
    assert.match(await bench.message(), /it stays as it is/);
    await change();
    await bench.until(() => bench.message(), (line) => /^Not kept: /.test(line), "what is not kept");
    assert.equal(await bench.stored(key), "{");
    assert.equal(await bench.stored(asideOf(key)), null);
    assert.equal((await bench.offered("Save what could not be read")).text, "{");
    // From now on what is done is kept.
    await change();
    await bench.untilStored(key, (text) => text !== "{");
    await bench.close();
  }
});
