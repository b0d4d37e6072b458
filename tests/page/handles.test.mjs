// Each handle by mouse, by keys and by touch; the outcome follows in the same frame.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PHONE, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** Way of the pointer that makes the value larger, CSS pixels, and the tab that shows the handle. */
const HANDLES = {
  soak: { larger: [0, -20], tab: 1, step: 1, larger_keys: ["ArrowUp", "ArrowRight"], smaller_keys: ["ArrowDown", "ArrowLeft"] },
  "soak-time": { larger: [20, 0], tab: 1, step: 1, larger_keys: ["ArrowUp", "ArrowRight"], smaller_keys: ["ArrowDown", "ArrowLeft"] },
  // A faster quench lies to the left.
  quench: { larger: [-8, 0], tab: 2, step: 0.05, larger_keys: ["ArrowUp", "ArrowLeft"], smaller_keys: ["ArrowDown", "ArrowRight"] },
  temper: { larger: [20, 0], tab: 3, step: 1, larger_keys: ["ArrowUp", "ArrowRight"], smaller_keys: ["ArrowDown", "ArrowLeft"] },
};

const opposite = ([right, down]) => [-right, -down];
const near = (value, expected, what) =>
  assert.ok(Math.abs(value - expected) < 1e-6 * Math.max(1, Math.abs(expected)), `${what}: ${value}, ${expected} wanted`);

for (const [name, { larger }] of Object.entries(HANDLES)) {
  test(`the handle ${name} follows the mouse both ways and stops where it is let go`, async () => {
    const bench = await BenchPage.ready(browser);
    const start = await bench.valueOf(name);
    await bench.drag(name, larger);
    const moved = await bench.until(() => bench.valueOf(name), (value) => value > start, `${name} grows`);
    await bench.page.mouse.move(10, 10);
    assert.equal(await bench.valueOf(name), moved, "a handle that was let go follows no longer");
    await bench.drag(name, opposite(larger));
    await bench.until(() => bench.valueOf(name), (value) => value < moved, `${name} shrinks`);
    bench.assertNoTrouble();
    await bench.close();
  });

  test(`the handle ${name} stays below the pointer that holds it`, async () => {
    const bench = await BenchPage.ready(browser);
    // Off the middle, so that a handle that jumps to the pointer shows.
    const [x, y] = await bench.placeOf(name);
    const [dx, dy] = larger;
    await bench.page.mouse.move(x + 5, y + 5);
    await bench.page.mouse.down();
    await bench.page.mouse.move(x + 5, y + 5 + 1);
    await bench.page.mouse.move(x + 5 + dx, y + 5 + dy, { steps: 5 });
    const box = await bench.handle(name).boundingBox();
    const along = dx === 0 ? box.y + box.height / 2 - (y + dy) : box.x + box.width / 2 - (x + dx);
    await bench.page.mouse.up();
    // One step of the value is at most a few pixels.
    assert.ok(Math.abs(along) <= 5, `${along} px from the pointer`);
    bench.assertNoTrouble();
    await bench.close();
  });
}

for (const [name, { step, larger_keys, smaller_keys }] of Object.entries(HANDLES)) {
  test(`the handle ${name} is moved by keys`, async () => {
    const bench = await BenchPage.ready(browser);
    const [least, most] = await bench.rangeOf(name);
    const start = await bench.valueOf(name);
    assert.equal(await bench.handle(name).getAttribute("role"), "slider");
    let expected = start;
    const pressed = async (key, change) => {
      expected += change;
      await bench.press(name, key);
      near(await bench.valueOf(name), expected, `${name} after ${key}`);
    };
    for (const key of larger_keys) await pressed(key, step);
    for (const key of smaller_keys) await pressed(key, -step);
    await pressed(`Shift+${larger_keys[0]}`, 10 * step);
    await pressed(`Shift+${smaller_keys[0]}`, -10 * step);
    await pressed(`Shift+${larger_keys[1]}`, 10 * step);
    await pressed(`Shift+${smaller_keys[1]}`, -10 * step);
    await pressed("PageUp", 10 * step);
    await pressed("PageDown", -10 * step);
    await bench.press(name, "End");
    near(await bench.valueOf(name), most, `${name} at its end`);
    await bench.press(name, larger_keys[0]);
    near(await bench.valueOf(name), most, `${name} beyond its end`);
    await bench.press(name, "Home");
    near(await bench.valueOf(name), least, `${name} at its start`);
    await bench.press(name, "PageDown");
    near(await bench.valueOf(name), least, `${name} before its start`);
    bench.assertNoTrouble();
    await bench.close();
  });

  test(`Escape takes a drag of the handle ${name} back, and keys work after it`, async () => {
    const bench = await BenchPage.ready(browser);
    const start = await bench.valueOf(name);
    const sentences = await bench.sentences();
    await bench.pull(name, HANDLES[name].larger);
    assert.notEqual(await bench.valueOf(name), start);
    await bench.page.keyboard.press("Escape");
    await bench.shows(() => bench.valueOf(name), start);
    await bench.page.mouse.move(700, 500);
    await bench.page.mouse.up();
    assert.equal(await bench.valueOf(name), start, "the pointer no longer holds the handle");
    assert.deepEqual(await bench.sentences(), sentences);
    await bench.page.keyboard.press(larger_keys[0]);
    assert.ok((await bench.valueOf(name)) > start, "the handle has kept the focus");
    bench.assertNoTrouble();
    await bench.close();
  });
}

for (const [name, { larger, tab }] of Object.entries(HANDLES)) {
  test(`the handle ${name} follows a finger, and the page does not scroll below it`, async () => {
    const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
    await bench.tabs.nth(tab).tap();
    const start = await bench.valueOf(name);
    await bench.placeOf(name);
    const scrolled = await bench.page.evaluate(() => scrollY);
    await bench.dragByTouch(name, larger);
    const moved = await bench.until(() => bench.valueOf(name), (value) => value > start, `${name} grows`);
    await bench.dragByTouch(name, opposite(larger));
    await bench.until(() => bench.valueOf(name), (value) => value < moved, `${name} shrinks`);
    assert.equal(await bench.page.evaluate(() => scrollY), scrolled);
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("a touch that the system takes away ends the drag", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  await bench.tabs.nth(1).tap();
  await bench.dragByTouch("soak", [0, -20], { last: "touchCancel" });
  await bench.shows(() => bench.held.count(), 0, "handles held");
  bench.assertNoTrouble();
  await bench.close();
});

test("a second button does not take hold of a handle", async () => {
  const bench = await BenchPage.ready(browser);
  const start = await bench.valueOf("soak");
  const [x, y] = await bench.placeOf("soak");
  await bench.page.mouse.move(x, y);
  await bench.page.mouse.down({ button: "right" });
  await bench.page.mouse.move(x, y - 40);
  await bench.page.mouse.up({ button: "right" });
  assert.equal(await bench.valueOf("soak"), start);
  await bench.close();
});

test("the sentence on carbon follows the soak handle in the same frame", async () => {
  const bench = await BenchPage.ready(browser);
  const frames = await bench.watchSoakFrames();
  await bench.drag("soak", [0, -40], 8);
  const seen = await frames();
  assert.ok(seen.length > 1, `${seen.length} frames`);
  const carbon = new Set();
  for (const frame of seen) {
    const [, degrees, dissolved] = /at (\d+)\s°C (\d\.\d+) of/.exec(plain(frame.map));
    assert.equal(plain(frame.handle), `${degrees} °C`);
    assert.match(plain(frame.sentence), new RegExp(`^${dissolved} % of`));
    carbon.add(dissolved);
  }
  assert.ok(carbon.size > 1, "the carbon in solution changes on the way");
  bench.assertNoTrouble();
  await bench.close();
});

test("the quench handle changes the margin, the temper handle the final hardness", async () => {
  const bench = await BenchPage.ready(browser);
  const spare = (text) => Number(/([\d.]+) s to spare/.exec(text)?.[1] ?? Number.NaN);
  const hardness = (text) => Number(/: ([\d.]+) HRC/.exec(text)?.[1] ?? Number.NaN);

  await bench.press("quench", "PageDown", "PageDown", "PageDown", "PageDown");
  const [, slow, , hard] = await bench.sentences();
  await bench.press("quench", "PageUp", "PageUp");
  const [, fast] = await bench.sentences();
  assert.ok(spare(fast) > spare(slow), `${slow} then ${fast}`);

  await bench.press("temper", "PageUp", "PageUp", "PageUp");
  const soft = (await bench.sentences()).at(-1);
  assert.ok(hardness(soft) < hardness(hard), `${hard} then ${soft}`);
  bench.assertNoTrouble();
  await bench.close();
});

test("the quench handle goes on into the next quenchant of its kind, and Escape takes it back", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.parts?.();
  const [x, y] = await bench.placeOf("quench");
  await bench.page.mouse.move(x, y);
  await bench.page.mouse.down();
  await bench.page.mouse.move(x - 60, y, { steps: 12 });
  await bench.until(() => bench.wordsOf("quench"), (words) => /^(fast oil|canola oil)/.test(words), "a faster oil");
  await bench.page.keyboard.press("Escape");
  await bench.page.mouse.up();
  await bench.shows(async () => plain(await bench.wordsOf("quench")), "medium oil ×1.2, gentle stir");
  await bench.press("quench", "Home");
  await bench.shows(async () => plain(await bench.wordsOf("quench")), "slow oil ×0.40, slower than its curve");
  bench.assertNoTrouble();
  await bench.close();
});

test("a handle tells screen readers its name, range and value in words", async () => {
  const bench = await BenchPage.ready(browser);
  const wordings = { soak: /^830 °C$/, "soak-time": /^12 min$/, quench: /^medium oil ×1\.2, gentle stir$/, temper: /^190 °C$/ };
  for (const [name, wording] of Object.entries(wordings)) {
    const [least, most] = await bench.rangeOf(name);
    const value = await bench.valueOf(name);
    assert.ok(least <= value && value <= most, `${name}: ${value} in ${least} to ${most}`);
    assert.match(await bench.wordsOf(name), wording);
    assert.ok(await bench.handle(name).getAttribute("aria-label"));
  }
  await bench.pick("Temperatures", "°F");
  await bench.shows(() => bench.wordsOf("soak"), "1526 °F");
  await bench.close();
});

for (const name of Object.keys(HANDLES)) {
  test(`the handle ${name} can be reached at both ends of its range, and comes back`, async () => {
    const bench = await BenchPage.ready(browser);
    const middle = await bench.valueOf(name);
    const astray = [];
    for (const key of ["Home", "End"]) {
      await bench.press(name, key);
      const [handle, plot] = await bench.handle(name).evaluate((element) => {
        const box = (of) => of.getBoundingClientRect().toJSON();
        return [box(element), box(element.parentElement)];
      });
      const [x, y] = [handle.x + handle.width / 2, handle.y + handle.height / 2];
      const inside = plot.left - 1 <= x && x <= plot.right + 1 && plot.top - 1 <= y && y <= plot.bottom + 1;
      if (!inside) astray.push(`${key} (${await bench.wordsOf(name)}): ${x - plot.left}, ${y - plot.top} px in the plot`);
    }
    assert.deepEqual(astray, []);
    // From the upper end the mouse brings it back, in as many pulls as the plot is long.
    for (let pull = 0; pull < 8 && (await bench.valueOf(name)) > middle; pull += 1) {
      const [right, down] = HANDLES[name].larger;
      await bench.drag(name, [-6 * right, -6 * down]);
    }
    assert.ok((await bench.valueOf(name)) <= middle);
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("the soak is dragged while the map of another steel is coming, and the map arrives", async () => {
  let letGo;
  const held = new Promise((resolve) => {
    letGo = resolve;
  });
  // The second thread starts late.
  const before = (page) =>
    page.route(/\/worker-[^/]*\.js$/, async (route) => {
      await held;
      await route.continue();
    });
  const bench = await (await BenchPage.open(browser, { before })).started();
  await bench.sentenceList.first().waitFor({ state: "attached" });
  const start = await bench.valueOf("soak");
  await bench.drag("soak", [0, -20]);
  const moved = await bench.until(() => bench.valueOf("soak"), (value) => value > start, "soak grows");
  await bench.takeGrade("O1");
  await bench.press("soak", "ArrowUp");
  assert.notEqual(await bench.valueOf("soak"), moved);
  assert.ok(await bench.isMapComing());
  assert.match(await bench.summary(0), /^Phase map: at \d+ °C/);
  letGo();
  await bench.mapArrives();
  bench.assertNoTrouble();
  await bench.close();
});

test("the table of quenchants waits for the hand to rest, is pale while it is of before, and then follows", async () => {
  const bench = await BenchPage.ready(browser, {
    // The handle and the table at once.
    viewport: { width: 1440, height: 2400 },
    before: (page) =>
      page.addInitScript(() => {
        window.tables = 0;
        const post = Worker.prototype.postMessage;
        Worker.prototype.postMessage = function (message, ...rest) {
          const send = () => post.call(this, message, ...rest);
          if (!String(message).includes("QuenchTable")) return send();
          window.tables += 1;
          // One that is held back is answered when `letGo` is called.
          if (window.isHeld) window.letGo = send;
          else send();
        };
      }),
  });
  const { page, tableOfQuenches } = bench;
  const asked = () => page.evaluate(() => window.tables);
  const busy = () => tableOfQuenches.getAttribute("aria-busy");
  const shown = () => tableOfQuenches.locator("tbody").innerText();
  const opacity = () => tableOfQuenches.locator("table").evaluate((table) => getComputedStyle(table).opacity);
  await bench.until(() => tableOfQuenches.locator("tbody tr").count(), (rows) => rows > 5, "rows of the table");
  await bench.shows(busy, "false", "the first table");
  const [before, was_asked] = [await shown(), await asked()];
  await page.evaluate(() => void (window.isHeld = true));
  const [x, y] = await bench.placeOf("soak");
  await page.mouse.move(x, y);
  await page.mouse.down();
  const moves = 40;
  for (let move = 1; move <= moves; move += 1) await page.mouse.move(x, y - move);
  assert.ok((await asked()) - was_asked <= moves / 8, `${await asked()} tables for ${moves} moves`);
  await page.mouse.up();
  await bench.until(asked, (now) => now > was_asked, "a table once the hand rests");
  // Asked, and not answered yet: what is shown is of before, and says so.
  await bench.shows(busy, "true", "that it is of before");
  await bench.shows(opacity, "0.45", "its paleness");
  assert.equal(await shown(), before);
  await page.evaluate(() => {
    window.isHeld = false;
    window.letGo();
  });
  await bench.shows(busy, "false", "that it is of now");
  assert.notEqual(await shown(), before);
  await bench.shows(opacity, "1", "its full ink");
  bench.assertNoTrouble();
  await bench.close();
});
