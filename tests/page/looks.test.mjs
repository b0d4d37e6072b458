// What the page looks like: canvases at every pixel density, widths, themes, paper, and for those who
// cannot see it.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, PHONE, WIDE, launch } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

test("the three plots are painted, and each has a sentence for those who do not see it", async () => {
  const bench = await BenchPage.ready(browser);
  const colours = await bench.coloursOfPlots();
  assert.equal(colours.length, 3);
  for (const count of colours) assert.ok(count > 20, `${colours} colours`);
  assert.match(await bench.summary(0), /^Phase map: at 830 °C/);
  assert.match(await bench.summary(1), /^Quench: /);
  assert.match(await bench.summary(2), /^Temper: 190 °C gives/);
  bench.assertNoTrouble();
  await bench.close();
});

for (const deviceScaleFactor of [1, 1.5, 2, 3]) {
  test(`at ${deviceScaleFactor} device pixels per pixel every canvas has the device pixels of its box`, async () => {
    const bench = await BenchPage.ready(browser, { deviceScaleFactor });
    const sizes = await bench.canvasSizes();
    assert.ok(sizes.length > 8, `${sizes.length} canvases`);
    const off = sizes.filter(({ pixels, box }) => pixels[0] !== box[0] || pixels[1] !== box[1]);
    assert.deepEqual(off, []);
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("the canvases follow a window that changes its size or goes to a denser screen", async () => {
  const bench = await BenchPage.ready(browser);
  const fit = async () => (await bench.canvasSizes()).filter(({ pixels, box }) => Math.abs(pixels[0] - box[0]) > 1 || Math.abs(pixels[1] - box[1]) > 1);
  await bench.page.setViewportSize({ width: 1280, height: 800 });
  await bench.until(fit, (off) => off.length === 0, "canvases of another size than their box");
  const session = await bench.page.context().newCDPSession(bench.page);
  // The emulation tells the page of another density only together with another size; the swatches of
  // the key keep theirs, so they show whether the density itself is followed.
  await session.send("Emulation.setDeviceMetricsOverride", { width: 1290, height: 800, deviceScaleFactor: 2, mobile: false });
  await bench.until(fit, (off) => off.length === 0, "canvases of another density than the screen");
  bench.assertNoTrouble();
  await bench.close();
});

test("the canvases are painted again when the typeface arrives late", async () => {
  const paint = (bench) => bench.plots.first().evaluate((canvas) => canvas.toDataURL());
  const prompt = await BenchPage.ready(browser);
  await prompt.page.evaluate(() => document.fonts.ready);
  await prompt.press("soak", "ArrowUp", "ArrowDown");
  const wanted = await paint(prompt);
  await prompt.close();

  let release;
  const held = new Promise((resolve) => (release = resolve));
  const bench = await BenchPage.open(browser, {
    before: (page) =>
      page.route("**/*.woff2", async (route) => {
        await held;
        await route.continue();
      }),
    // The page is not loaded whole until the typeface is there.
    until: "commit",
  });
  await bench.started();
  await bench.sentenceList.first().waitFor();
  assert.notEqual(await paint(bench), wanted, "the typeface came too early for this test");
  release();
  await bench.page.evaluate(() => document.fonts.ready);
  await bench.until(async () => (await paint(bench)) === wanted, (same) => same, "painted in the late typeface");
  await bench.close();
});

for (const width of [320, 390, 600, 759, 760, 768, 1024, 1199, 1200, 1440, 1920]) {
  test(`at ${width} px nothing reaches over the side, on bench, shelf and sources`, async () => {
    const bench = await BenchPage.ready(browser, { viewport: { width, height: 900 } });
    assert.ok((await bench.overflow()) <= 0, `bench: ${await bench.overflow()} px too wide`);
    await bench.keep();
    assert.ok((await bench.overflow()) <= 0, `notice: ${await bench.overflow()} px too wide`);
    for (const place of ["Decide", "Experiments", "Shelf", "Logbook", "Sources"]) {
      await bench.go(place);
      assert.ok((await bench.overflow()) <= 0, `${place}: ${await bench.overflow()} px too wide`);
    }
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("every panel lies inside the window, wide and in the middle", async () => {
  for (const width of [768, 1024, 1440]) {
    const bench = await BenchPage.ready(browser, { viewport: { width, height: 900 } });
    const words = bench.wordButtons;
    const outside = [];
    for (let index = 0; index < (await words.count()); index += 1) {
      await words.nth(index).click();
      await bench.panel.waitFor();
      const { x, width: wide } = await bench.panel.boundingBox();
      if (x < 0 || x + wide > width) outside.push(`${await words.nth(index).getAttribute("title")}: ${x} to ${x + wide} of ${width}`);
      await bench.page.keyboard.press("Escape");
    }
    assert.deepEqual(outside, []);
    await bench.close();
  }
});

test("an open panel covers no word of its own sentence", async () => {
  for (const width of [768, 1024, 1200, 1440]) {
    const bench = await BenchPage.ready(browser, { viewport: { width, height: 900 } });
    const words = bench.wordButtons;
    const covered = [];
    for (let index = 0; index < (await words.count()); index += 1) {
      const word = words.nth(index);
      await word.click();
      await bench.panel.waitFor();
      covered.push(...(await bench.wordsUnderPanel()));
      await bench.page.keyboard.press("Escape");
    }
    assert.deepEqual(covered, [], `at ${width} px`);
    await bench.close();
  }
});

test("on a phone one stage is shown at a time, and the dock keeps four figures in view", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  const titles = ["Soak", "Quench", "Temper"];
  for (const [index, title] of titles.entries()) {
    // The first tab is that of the steps before hardening.
    await bench.tabs.nth(index + 1).tap();
    assert.deepEqual(await bench.shownStages(), [title]);
    assert.equal(await bench.tabs.nth(index + 1).getAttribute("aria-selected"), "true");
    assert.equal(await bench.figures.count(), 4);
    for (const figure of await bench.figures.all()) {
      assert.match(await figure.innerText(), /\d/);
      const { y, height } = await figure.boundingBox();
      assert.ok(y >= 0 && y + height <= PHONE.height, "the dock is in the window");
    }
    const [colours] = (await bench.coloursOfPlots()).slice(index, index + 1);
    assert.ok(colours > 20, `${title} is painted`);
  }
  await bench.tabs.nth(1).tap();
  const [dissolved] = await bench.figures.allInnerTexts();
  await bench.press("soak", "PageUp", "PageUp");
  await bench.until(() => bench.figures.first().innerText(), (now) => now !== dissolved, "the dock follows");
  bench.assertNoTrouble();
  await bench.close();
});

test("on a phone a panel has a button at hand that closes it and gives the focus back", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  for (const name of ["The steel", "Quenchant"]) {
    await bench.openWord(name);
    const done = bench.panel.getByRole("button", { name: "Done", exact: true });
    const { y, height } = await done.boundingBox();
    assert.ok(height >= 44 && y + height <= PHONE.height, `${name}: ${height} px high, to ${y + height}`);
    await done.tap();
    await bench.panel.waitFor({ state: "detached" });
    assert.equal(await bench.word(name).evaluate((word) => word === document.activeElement), true, name);
  }
  await bench.page.setViewportSize({ width: 1440, height: 900 });
  await bench.openWord("The steel");
  assert.equal(await bench.panel.getByRole("button", { name: "Done", exact: true }).count(), 0, "wide");
  bench.assertNoTrouble();
  await bench.close();
});

test("the list of grades opens at the one in use, and the page stays where it is", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("The steel");
  const inView = () =>
    bench.option("52100").evaluate((row) => {
      const [one, list] = [row, row.closest(".grade-list")].map((part) => part.getBoundingClientRect());
      return one.top >= list.top && one.bottom <= list.bottom;
    });
  await bench.until(inView, (is) => is, "the chosen grade is in view");
  assert.equal(await bench.page.evaluate(() => scrollY), 0);
  assert.equal(await bench.gradeSearch.evaluate((field) => field === document.activeElement), true);
  await bench.close();
});

test("in the middle there is room beside the last step for what adds a temper", async () => {
  const bench = await BenchPage.ready(browser, { viewport: { width: 820, height: 900 } });
  const [last, add] = await bench.page.evaluate(() =>
    [".blocks button:has(+ .last)", ".blocks .last"].map((part) => document.querySelector(part).getBoundingClientRect()).map(({ left, right }) => [left, right]),
  );
  assert.ok(last[1] <= add[0] && add[1] - add[0] >= 24, `${last} beside ${add}`);
  await bench.close();
});

test("on a phone what is pressed often is at least 24 px each way", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  const small = await bench.mainControls.evaluateAll((all) =>
    all
      .filter((one) => one.checkVisibility())
      .map((one) => [one.textContent || one.ariaLabel, one.getBoundingClientRect()])
      .filter(([, { width, height }]) => width < 24 || height < 24)
      .map(([what, { width, height }]) => `${what}: ${width} × ${height}`),
  );
  assert.deepEqual(small, []);
  await bench.close();
});

test("on a phone the head takes two rows; units and theme are one press away", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  assert.ok((await bench.head.boundingBox()).height < 100);
  assert.equal(await bench.button("°F").count(), 0);
  await bench.page.getByLabel("Units and theme").tap();
  await bench.button("°F").tap();
  assert.equal(await bench.page.getByRole("button", { name: "°F", exact: true }).getAttribute("aria-pressed"), "true");
  assert.ok((await bench.overflow()) <= 0);
  bench.assertNoTrouble();
  await bench.close();
});

test("a notice moves nothing", async () => {
  for (const viewport of [WIDE, PHONE]) {
    const bench = await BenchPage.ready(browser, { viewport });
    const before = await bench.placesOnBench();
    await bench.keep();
    assert.deepEqual(await bench.placesOnBench(), before);
    await bench.close();
  }
});

test("no line of a sentence begins with a mark of the word before", async () => {
  const bench = await BenchPage.ready(browser);
  const loose = [];
  for (let width = 1440; width > 320; width -= 7) {
    await bench.page.setViewportSize({ width, height: 900 });
    loose.push(...(await bench.looseMarks()));
  }
  assert.deepEqual(loose, []);
  await bench.close();
});

test("the block of a step picks its stage", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  await bench.block(/^Temper\s1/).tap();
  assert.deepEqual(await bench.shownStages(), ["Temper"]);
  await bench.block(/^Soak/).tap();
  assert.deepEqual(await bench.shownStages(), ["Soak"]);
  bench.assertNoTrouble();
  await bench.close();
});

test("the theme is switched, reaches the canvases and is there after a reload", async () => {
  const bench = await BenchPage.ready(browser, { colorScheme: "light" });
  const light = await bench.lightnessOf(0);
  await bench.pick("Theme", "shop");
  assert.equal(await bench.theme(), "dark");
  const dark = await bench.until(() => bench.lightnessOf(0), (now) => now < light - 0.3, `darker than ${light}`);
  await bench.untilStored(KEYS.preferences, (text) => /"dark"/.test(text));
  await bench.reload();
  assert.equal(await bench.theme(), "dark");
  await bench.until(() => bench.lightnessOf(0), (now) => Math.abs(now - dark) < 0.05, `dark as before, ${dark}`);
  await bench.pick("Theme", "day");
  await bench.until(() => bench.lightnessOf(0), (now) => Math.abs(now - light) < 0.05, `light as before, ${light}`);
  bench.assertNoTrouble();
  await bench.close();
});

test("units chosen on a dark system do not fix the theme", async () => {
  const bench = await BenchPage.ready(browser, { colorScheme: "dark" });
  await bench.pick("Temperatures", "°F");
  await bench.untilStored(KEYS.preferences, (text) => /fahrenheit/.test(text));
  await bench.page.emulateMedia({ colorScheme: "light" });
  await bench.reload();
  assert.equal(await bench.theme(), "light", "the system's theme, since none was chosen");
  await bench.close();
});

for (const colorScheme of ["light", "dark"]) {
  test(`on paper there are no controls (${colorScheme})`, async () => {
    const bench = await BenchPage.ready(browser, { colorScheme });
    await bench.page.emulateMedia({ media: "print" });
    const shown = await bench.controls.evaluateAll((all) =>
      all.filter((one) => one.checkVisibility()).map((one) => one.className || one.textContent),
    );
    assert.deepEqual([...new Set(shown)], []);
    await bench.close();
  });

  test(`on paper all stages and the outcome stand in black on white (${colorScheme})`, async () => {
    const bench = await BenchPage.ready(browser, { colorScheme });
    await bench.page.emulateMedia({ media: "print" });
    assert.deepEqual(await bench.shownStages(), ["Soak", "Quench", "Temper"]);
    for (const part of [bench.sentenceList.first(), bench.word("The steel"), bench.plots.first()]) assert.ok(await part.isVisible());
    const ground = await bench.page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    assert.equal(ground, "rgb(255, 255, 255)");
    await bench.until(() => bench.lightnessOf(0), (value) => value > 0.6, "the phase map's lightness on paper");
    await bench.close();
  });
}

test("where less motion is asked for nothing moves by itself", async () => {
  const bench = await BenchPage.ready(browser, { reducedMotion: "reduce" });
  await bench.openWord("Furnace");
  await bench.press("soak", "ArrowUp");
  const moving = await bench.page.evaluate(() =>
    document.getAnimations().filter((one) => one.effect.getComputedTiming().endTime > 20).map((one) => one.animationName ?? one.transitionProperty),
  );
  assert.deepEqual(moving, []);
  bench.assertNoTrouble();
  await bench.close();
});

for (const colorScheme of ["light", "dark"]) {
  test(`no accessibility faults on bench, panels, number, shelf and sources (${colorScheme})`, async () => {
    const bench = await BenchPage.ready(browser, { colorScheme });
    const faults = [];
    const scan = async (where) => faults.push(...(await bench.accessibilityFaults()).map((fault) => `${where}: ${fault}`));
    await scan("bench");
    for (const name of ["The piece", "The steel", "Section", "Quenchant", "Soak temperature", "Soak time", "Cold treatment", "Number of tempers"]) {
      await bench.openWord(name);
      await scan(name);
      await bench.page.keyboard.press("Escape");
    }
    await bench.openWord("Furnace");
    await bench.type("much");
    await scan("a wrong text");
    await bench.page.keyboard.press("Escape");
    await bench.numberOf(0).click();
    await scan("an opened number");
    await bench.page.keyboard.press("Escape");
    await bench.keep();
    await scan("a notice");
    for (const place of ["Shelf", "Logbook", "Sources"]) {
      await bench.go(place);
      await scan(place);
    }
    assert.deepEqual([...new Set(faults)], []);
    await bench.close();
  });

  test(`no accessibility faults in any place on a phone (${colorScheme})`, async () => {
    const bench = await BenchPage.ready(browser, { colorScheme, viewport: PHONE, hasTouch: true });
    const faults = [];
    for (const place of ["Bench", "Decide", "Experiments", "Shelf", "Logbook", "Sources"]) {
      await bench.go(place);
      await bench.until(() => bench.coming.count(), (count) => count === 0, place);
      faults.push(...(await bench.accessibilityFaults()).map((fault) => `${place}: ${fault}`));
    }
    await bench.go("Bench");
    await bench.toCard();
    faults.push(...(await bench.accessibilityFaults()).map((fault) => `card: ${fault}`));
    assert.deepEqual([...new Set(faults)], []);
    bench.assertNoTrouble();
    await bench.close();
  });

  test(`no accessibility faults where the route is refused, or a part of it (${colorScheme})`, async () => {
    const bench = await BenchPage.ready(browser, { colorScheme });
    const faults = [];
    await bench.openWord("The steel");
    await bench.option("D2").click();
    await bench.page.keyboard.press("Escape");
    await bench.until(() => bench.sentences(), (all) => /holds for/.test(all.join(" ")), "the refusal");
    faults.push(...(await bench.accessibilityFaults()).map((fault) => `D2: ${fault}`));
    assert.deepEqual(await bench.namelessPictures(), []);
    await bench.press("soak", "Home");
    await bench.refusal.waitFor();
    faults.push(...(await bench.accessibilityFaults()).map((fault) => `below A1: ${fault}`));
    assert.deepEqual([...new Set(faults)], []);
    await bench.close();
  });
}

test("the page is used by keys alone: every control is reached by Tab, in the order of the page", async () => {
  const bench = await BenchPage.ready(browser, { viewport: WIDE });
  const reached = new Set();
  for (let step = 0; step < 120; step += 1) {
    await bench.page.keyboard.press("Tab");
    const name = await bench.focused();
    if (name === "" && step > 0) break;
    reached.add(name);
    const { outline, inside } = await bench.page.evaluate(() => {
      const held = document.activeElement;
      return { outline: getComputedStyle(held).outlineStyle, inside: held.checkVisibility() };
    });
    assert.ok(inside && outline !== "none", `${name} shows that it has the focus`);
  }
  for (const name of ["Soak temperature", "Soak time", "Quench speed", "Temper temperature", "The steel", "Quenchant", "°F", "shop"]) {
    assert.ok(reached.has(name), `${name} among ${[...reached]}`);
  }
  await bench.close();
});
