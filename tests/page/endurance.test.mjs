// What may happen to a page in use: it is loaded anew or ends in the middle of a save, the store fills up,
// the clock is set, a thread ends. Nothing is lost, and the page goes on.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, asideOf, launch } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** What is kept can be read, and nothing had to be set aside. */
async function isReadable(bench) {
  for (const key of [KEYS.bench, KEYS.shelf]) {
    const text = await bench.stored(key);
    if (text !== null) assert.ok(JSON.parse(text).routes.length > 0, key);
    assert.equal(await bench.stored(asideOf(key)), null);
  }
  assert.equal(await bench.messages.count(), 0);
}

test("loaded anew at any moment of a save, the page has what it showed", async () => {
  const bench = await BenchPage.ready(browser);
  // Before, at and after the moment in which a change is written.
  for (const [round, wait_ms] of [0, 40, 300, 310].entries()) {
    await bench.press("soak", "ArrowUp");
    await bench.keep();
    await bench.page.waitForTimeout(wait_ms);
    await bench.reload();
    assert.equal(await bench.valueOf("soak"), 831 + round);
    await isReadable(bench);
  }
  await bench.go("Shelf");
  await bench.shows(async () => (await bench.names()).length, 4);
  bench.assertNoTrouble();
  await bench.close();
});

test("a page that ends without a word leaves what was last written, whole", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.keep();
  await bench.press("soak", "PageUp");
  await bench.savedRoute(({ soak }) => soak.temperature_c === 840);
  await bench.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes.length === 1);
  const context = bench.page.context();
  const session = await context.newCDPSession(bench.page);
  const ended = bench.page.waitForEvent("crash");
  // In the middle of the next change.
  await bench.press("soak", "PageUp");
  session.send("Page.crash").catch(() => {});
  await ended;
  const page = new BenchPage(await context.newPage(), bench.url);
  await page.page.goto(bench.url);
  await page.started();
  assert.ok([840, 850].includes(await page.valueOf("soak")));
  await isReadable(page);
  await page.go("Shelf");
  await page.shows(async () => (await page.names()).length, 1);
  await page.close();
});

test("what was noted last is there after the page was loaded anew", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.logRun();
  await bench.shows(() => bench.recordCount("runs"), 1);
  for (const note of ["soft at the tang", "soft at the tang, hard at the tip"]) {
    await bench.logField("Notes").fill(note);
    // Writes wait for quiet; a reload before that may cut the browser's own write short.
    await bench.page.waitForTimeout(1000);
    await bench.reload();
    await bench.go("Logbook");
    await bench.runsAre(1);
    await bench.openRun(0);
    await bench.shows(() => bench.logField("Notes").inputValue(), note);
  }
  bench.assertNoTrouble();
  await bench.close();
});

test("what is typed in the instant of a reload is there afterwards, to the last letter", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.logRun();
  await bench.shows(() => bench.recordCount("runs"), 1);
  for (const note of ["soft at the tang", "soft at the tang, hard at the tip", "soft"]) {
    await bench.logField("Notes").fill(note);
    await bench.reload();
    await bench.go("Logbook");
    await bench.runsAre(1);
    await bench.openRun(0);
    await bench.shows(() => bench.logField("Notes").inputValue(), note);
  }
  await bench.shows(() => bench.stored(KEYS.typed), null);
  bench.assertNoTrouble();
  await bench.close();
});

test("what the database did not get any more is taken back once, and does not undo what came after", async () => {
  const before = (page) =>
    page.addInitScript(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (...given) {
        // The transaction goes on for as long as it is asked for more: the page ends before it does.
        const askOn = () => {
          if (window.isHeld) this.get(0).onsuccess = askOn;
        };
        askOn();
        return put.apply(this, given);
      };
    });
  const bench = await BenchPage.ready(browser, { before });
  const again = async () => {
    await bench.reload();
    await bench.go("Logbook");
  };
  const notes = async () => {
    await bench.openRun(0);
    return bench.logField("Notes").inputValue();
  };
  await bench.logRun();
  await bench.write("Notes", "written");
  await bench.shows(() => bench.stored(KEYS.typed), null);
  await bench.page.evaluate(() => (window.isHeld = true));
  await bench.logField("Notes").fill("cut short");
  assert.match(await bench.stored(KEYS.typed), /cut short/);
  await again();
  await bench.runsAre(1);
  assert.equal(await notes(), "cut short");
  await bench.shows(() => bench.stored(KEYS.typed), null);
  await again();
  await bench.runsAre(1);
  assert.equal(await notes(), "cut short");
  // A run that is taken out does not come back.
  await bench.page.evaluate(() => (window.isHeld = true));
  await bench.logField("Notes").fill("cut short once more");
  assert.match(await bench.stored(KEYS.typed), /once more/);
  await bench.button("Delete").click();
  await bench.shows(() => bench.stored(KEYS.typed), null);
  await bench.page.evaluate(() => (window.isHeld = false));
  await bench.shows(() => bench.recordCount("runs"), 0);
  await again();
  await bench.page.getByText("Nothing is logged yet", { exact: false }).first().waitFor();
  bench.assertNoTrouble();
  await bench.close();
});

test("a store that is really full is told, leaves what it had, and takes all once there is room", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.keep();
  await bench.press("soak", "ArrowUp");
  await bench.savedRoute(({ soak }) => soak.temperature_c === 831);
  const before = await bench.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes.length === 1);
  await bench.button("Dismiss").click();
  // To the last character.
  await bench.page.evaluate(() => {
    let filling = "";
    for (let length = 1 << 22; length >= 1; length >>= 1) {
      for (;;) {
        try {
          localStorage.setItem("filling", filling + "x".repeat(length));
          filling += "x".repeat(length);
        } catch {
          break;
        }
      }
    }
  });
  await bench.keep();
  await bench.until(() => bench.message(), (line) => /store is full/.test(line), "that the store is full");
  assert.equal(await bench.stored(KEYS.shelf), before);
  await bench.go("Shelf");
  await bench.shows(async () => (await bench.names()).length, 2);
  assert.equal(JSON.parse((await bench.export()).text).routes.length, 2);
  await bench.page.evaluate(() => localStorage.removeItem("filling"));
  await bench.shelfButton(0, "Duplicate").click();
  await bench.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes.length === 3);
  await bench.reload();
  await bench.go("Shelf");
  await bench.shows(async () => (await bench.names()).length, 3);
  bench.assertNoTrouble();
  await bench.close();
});

test("a logbook that found no room is written whole once there is some", async () => {
  const before = (page) =>
    page.addInitScript(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (...given) {
        if (window.isFull) throw new DOMException("full", "QuotaExceededError");
        return put.apply(this, given);
      };
    });
  const bench = await BenchPage.ready(browser, { before });
  await bench.logRun();
  await bench.shows(() => bench.recordCount("runs"), 1);
  await bench.page.evaluate(() => (window.isFull = true));
  await bench.write("Notes", "written while it was full");
  assert.match(await bench.message(), /store is full/);
  await bench.logRun();
  assert.equal(await bench.recordCount("runs"), 1);
  await bench.page.evaluate(() => (window.isFull = false));
  await bench.write("Notes", "written when there was room");
  await bench.shows(() => bench.recordCount("runs"), 2);
  await bench.reload();
  await bench.go("Logbook");
  await bench.runsAre(2);
  const notes = [];
  for (const index of [0, 1]) {
    await bench.openRun(index);
    notes.push(await bench.logField("Notes").inputValue());
    await bench.button("All runs").click();
  }
  assert.deepEqual(notes.sort(), ["written when there was room", "written while it was full"]);
  await bench.close();
});

test("a clock that is set back or ahead disorders nothing", async () => {
  const before = (page) =>
    page.addInitScript(() => {
      const Real = Date;
      window.ahead_ms = 0;
      window.Date = class extends Real {
        constructor(...given) {
          super(...(given.length > 0 ? given : [Real.now() + window.ahead_ms]));
        }
        static now = () => Real.now() + window.ahead_ms;
      };
    });
  const bench = await BenchPage.ready(browser, { before });
  const YEAR_MS = 365 * 86_400_000;
  const years = [0, -3, 5, -1];
  for (const [index, ahead] of years.entries()) {
    await bench.page.evaluate((ahead_ms) => (window.ahead_ms = ahead_ms), ahead * YEAR_MS);
    await bench.go("Bench");
    await bench.press("soak", "ArrowUp");
    await bench.savedRoute(({ soak }) => soak.temperature_c === 831 + index);
    await bench.keep();
    await bench.logRun();
    await bench.write("Notes", `run ${index}`);
  }
  // The shelf stands as it was filled, and each change is undone by itself.
  await bench.go("Shelf");
  const NAME = "marking knife, 52100";
  const names = [NAME, `${NAME} (2)`, `${NAME} (3)`, `${NAME} (4)`];
  await bench.shows(async () => JSON.stringify(await bench.names()), JSON.stringify(names));
  await bench.untilStored(KEYS.shelf, (text) => JSON.parse(text).routes.length === 4);
  const soaks = JSON.parse(await bench.stored(KEYS.shelf)).routes.map(({ route }) => route.soak.temperature_c);
  assert.deepEqual(soaks, [831, 832, 833, 834]);
  await bench.shows(() => bench.recordCount("runs"), 4);
  await bench.reload();
  assert.equal(await bench.valueOf("soak"), 834);
  await bench.go("Logbook");
  // By the day that each says, the last first; another order is a choice of the list.
  const rows = await bench.runsAre(4);
  const days = rows.map((row) => row[0]);
  assert.deepEqual(days, [...days].sort().reverse());
  assert.equal(new Set(days).size, 4, days.join());
  const notes = [];
  for (const index of rows.keys()) {
    await bench.openRun(index);
    notes.push(await bench.logField("Notes").inputValue());
    await bench.button("All runs").click();
  }
  assert.deepEqual(notes, ["run 2", "run 0", "run 3", "run 1"]);
  await bench.go("Bench");
  await bench.press("soak", "PageUp");
  await bench.page.evaluate((ahead_ms) => (window.ahead_ms = ahead_ms), -9 * YEAR_MS);
  await bench.savedRoute(({ soak }) => soak.temperature_c === 844);
  await bench.page.keyboard.press("Control+z");
  await bench.shows(() => bench.valueOf("soak"), 834);
  bench.assertNoTrouble();
  await bench.close();
});

// -- The second thread

/** Lets the next threads that are asked something end right then, as many as `window.toEnd` says: as a
    browser does that needs their memory, or with a fault where `window.isFault`. */
const mortal = (page) =>
  page.addInitScript(() => {
    window.toEnd = 0;
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (message, ...rest) {
      post.call(this, message, ...rest);
      if (typeof message !== "string" || window.toEnd === 0) return;
      window.toEnd -= 1;
      if (window.isFault) setTimeout(() => this.dispatchEvent(new ErrorEvent("error")));
      else this.terminate();
    };
  });
const letEnd = (bench, count, isFault = false) => bench.page.evaluate((now) => void Object.assign(window, now), { toEnd: count, isFault });

test("a thread that ends while nothing is asked is started again, and the next map comes from it", async () => {
  const bench = await BenchPage.ready(browser);
  const next = bench.page.waitForEvent("worker");
  await bench.page.workers()[0].evaluate(() => close()).catch(() => {});
  const second = await next;
  await bench.takeGrade("O1");
  await bench.mapArrives();
  assert.deepEqual(bench.page.workers(), [second]);
  bench.assertNoTrouble();
  await bench.close();
});

test("where each thread ends as it comes no more are started after a few, the page works by itself and says so", async () => {
  const before = (page) =>
    page.addInitScript(() => {
      const Real = Worker;
      window.started = 0;
      window.Worker = class extends Real {
        constructor(...given) {
          super(...given);
          window.started += 1;
          // Once it is ready, before it is asked anything.
          this.addEventListener("message", ({ data }) => {
            if (data === "ready" && window.isDeadly) setTimeout(() => this.dispatchEvent(new ErrorEvent("error")));
          });
        }
      };
    });
  const bench = await BenchPage.ready(browser, { before });
  await bench.quenchCells.first().waitFor();
  const started = () => bench.page.evaluate(() => window.started);
  await bench.page.evaluate(() => (window.isDeadly = true));
  const beforeEnds = await started();
  await bench.page.workers()[0].evaluate(() => close()).catch(() => {});
  assert.match(await bench.message(), /ends the thread beside the page again and again/);
  const afterEnds = await started();
  assert.ok(afterEnds - beforeEnds <= 4, `${afterEnds} threads`);
  for (const grade of ["O1", "1095"]) {
    await bench.takeGrade(grade);
    await bench.mapArrives();
    assert.match(await bench.summary(0), /^Phase map: at/);
  }
  assert.equal(await started(), afterEnds);
  assert.equal(await bench.messages.count(), 1);
  bench.assertNoTrouble();
  await bench.close();
});

test("a thread that ends in the middle of a map is started again, and the map comes; after a second end it is told", async () => {
  const bench = await BenchPage.ready(browser, { before: mortal });
  for (const [grade, isFault] of [["O1", false], ["1095", true]]) {
    const next = bench.page.waitForEvent("worker");
    await letEnd(bench, 1, isFault);
    await bench.takeGrade(grade);
    await next;
    await bench.mapArrives();
    assert.match(await bench.summary(0), /^Phase map: at/);
  }
  await letEnd(bench, 2);
  await bench.takeGrade("O1");
  await bench.page.getByText("broke this off twice", { exact: false }).first().waitFor();
  await bench.takeGrade("52100");
  await bench.mapArrives();
  await bench.until(() => bench.summary(0), (now) => /^Phase map: at/.test(now), "the next map");
  bench.assertNoTrouble();
  await bench.close();
});

test("a search whose thread ends is done by another; where that ends too it is told, and asked again it comes", async () => {
  const bench = await BenchPage.ready(browser, { before: mortal });
  await bench.go("Decide");
  const told = bench.page.getByText("broke this off twice", { exact: false });
  const done = bench.page.getByText("Done.", { exact: true });
  await letEnd(bench, 2);
  await bench.button("Find routes").click();
  await told.waitFor();
  await letEnd(bench, 1);
  await bench.button("Find routes").click();
  await done.first().waitFor({ timeout: 60_000 });
  assert.equal(await told.count(), 0);
  bench.assertNoTrouble();
  await bench.close();
});

test("where no thread can be started the page does its errands itself", async () => {
  const bench = await BenchPage.ready(browser, {
    before: (page) =>
      page.addInitScript(() => {
        const post = Worker.prototype.postMessage;
        // As when the host is not reached for what the thread loads.
        Worker.prototype.postMessage = function (message, ...rest) {
          const given = typeof message === "object" ? { ...message, script: "data:text/javascript,0" } : message;
          return post.call(this, given, ...rest);
        };
      }),
  });
  await bench.takeGrade("O1");
  await bench.mapArrives();
  assert.match(await bench.summary(0), /^Phase map: /);
  await bench.close();
});
