// The typed twins of the handles, units, and the choices of steel, section and quenchant.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, KEYS, PHONE, exampleOf, launch, plain } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

test("a word opens its panel with the focus in the field; Escape closes it and gives the focus back", async () => {
  const bench = await BenchPage.ready(browser);
  for (const name of ["The piece", "The steel", "Furnace", "Target", "Soak temperature", "Agitation", "Temper time"]) {
    await bench.openWord(name);
    assert.equal(await bench.panel.getAttribute("aria-label"), name);
    assert.equal(await bench.word(name).getAttribute("aria-expanded"), "true");
    await bench.shows(() => bench.panelFocus.count(), 1, `${name}: fields with the focus`);
    await bench.page.keyboard.press("Escape");
    await bench.shows(() => bench.panel.count(), 0, `${name}: panels`);
    assert.equal(await bench.focused(), name);
    assert.equal(await bench.word(name).getAttribute("aria-expanded"), "false");
  }
  bench.assertNoTrouble();
  await bench.close();
});

test("a press outside closes a panel, and one panel is open at a time", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Furnace");
  await bench.outcome.click({ position: { x: 5, y: 5 } });
  await bench.shows(() => bench.panel.count(), 0, "panels");
  await bench.openWord("Furnace");
  await bench.word("Soak temperature").click();
  await bench.shows(() => bench.panel.getAttribute("aria-label"), "Soak temperature");
  assert.equal(await bench.panel.count(), 1);
  bench.assertNoTrouble();
  await bench.close();
});

test("a panel closes when the focus goes on by keys, forward or back", async () => {
  const bench = await BenchPage.ready(browser);
  for (const name of ["Target", "Soak time", "Temper temperature"]) {
    for (const [key, steps] of [["Tab", 12], ["Shift+Tab", 3]]) {
      await bench.word(name).press("Enter");
      await bench.shows(() => bench.panelFocus.count(), 1, `${name}: fields with the focus`);
      await bench.page.keyboard.press("Tab");
      assert.equal(await bench.panel.count(), 1, `${name}: open while the focus is inside`);
      for (let step = 0; step < steps && (await bench.panel.count()) > 0; step += 1) await bench.page.keyboard.press(key);
      await bench.page.keyboard.press(key);
      await bench.shows(() => bench.panel.count(), 0, `${name}: panels after ${key}`);
      assert.notEqual(await bench.focused(), "", `${name}: the focus is somewhere`);
    }
  }
  bench.assertNoTrouble();
  await bench.close();
});

test("a word opens by Enter and by Space", async () => {
  const bench = await BenchPage.ready(browser);
  for (const key of ["Enter", "Space"]) {
    await bench.word("Soak time").press(key);
    await bench.shows(() => bench.panelFocus.count(), 1, "fields with the focus");
    await bench.page.keyboard.press("Escape");
  }
  await bench.close();
});

test("temperatures are typed in either scale, with point or comma, whatever is shown", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Soak temperature");
  for (const [typed, value, words] of [
    ["1550 F", (1550 - 32) / 1.8, "843 °C"],
    ["845 °C", 845, "845 °C"],
    ["1550°F", (1550 - 32) / 1.8, "843 °C"],
    ["851,5", 851.5, "852 °C"],
    ["851.5 C", 851.5, "852 °C"],
    [" 840 ", 840, "840 °C"],
  ]) {
    await bench.type(typed);
    await bench.until(() => bench.valueOf("soak"), (now) => Math.abs(now - value) < 1e-9, `${typed} gives ${value}`);
    assert.equal(await bench.wrong.count(), 0, typed);
    await bench.shows(async () => plain(await bench.word("Soak temperature").textContent()), words);
  }
  await bench.pick("Temperatures", "°F");
  await bench.openWord("Soak temperature");
  await bench.type("1500");
  await bench.until(() => bench.valueOf("soak"), (now) => Math.abs(now - (1500 - 32) / 1.8) < 1e-9, "1500 is °F now");
  bench.assertNoTrouble();
  await bench.close();
});

test("lengths and times are typed with or without unit", async () => {
  const bench = await BenchPage.ready(browser);
  const spine = async () => (await bench.savedRoute()).section.spine_mm;
  await bench.openWord("Section");
  await bench.type("3,2", "Spine");
  await bench.shows(spine, 3.2);
  await bench.type('1/4"', "Spine");
  await bench.shows(spine, 6.35);
  // Shown as it was meant, in the field and in the words.
  assert.equal(plain(await bench.field("Spine").inputValue()), "6.35 mm");
  assert.match(plain(await bench.word("Section").textContent()), /^6\.35 mm/);
  await bench.type("5 mm", "Spine");
  await bench.shows(spine, 5);
  await bench.page.keyboard.press("Escape");

  await bench.openWord("Soak time");
  for (const [typed, minutes] of [["20", 20], ["1 h", 60], ["90 s", 1.5], ["1 h 30 min", 90], ["0,5 h", 30]]) {
    await bench.type(typed);
    await bench.shows(() => bench.valueOf("soak-time"), minutes, typed);
  }
  bench.assertNoTrouble();
  await bench.close();
});

test("a wrong text says what is wrong and keeps the last good value", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Soak temperature");
  const sentences = await bench.sentences();
  for (const [typed, reason] of [
    ["hot", /hot/],
    ["", /./],
    ["9999", /Between 600 °C and 1200 °C\./],
    ["-5", /Between 600 °C and 1200 °C\./],
    ["1e400", /./],
    ["NaN", /./],
    ["infinity", /./],
    ["840 840", /./],
  ]) {
    await bench.type(typed);
    await bench.wrong.waitFor();
    assert.match(plain(await bench.wrong.textContent()), reason, typed);
    assert.equal(await bench.field().inputValue(), typed, "the wrong text stays to be mended");
    assert.equal(await bench.field().getAttribute("aria-invalid"), "true");
    assert.equal(await bench.valueOf("soak"), 830, `after ${typed}`);
  }
  assert.deepEqual(await bench.sentences(), sentences);
  await bench.type("835");
  await bench.shows(() => bench.wrong.count(), 0, "complaints");
  assert.equal(await bench.valueOf("soak"), 835);
  assert.equal(await bench.field().getAttribute("aria-invalid"), "false");
  bench.assertNoTrouble();
  await bench.close();
});

test("a handle and its field are the same value", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Soak temperature");
  await bench.type("900");
  await bench.shows(() => bench.wordsOf("soak"), "900 °C");
  await bench.field().press("ArrowUp");
  await bench.shows(() => bench.valueOf("soak"), 901);
  await bench.shows(async () => plain(await bench.field().inputValue()), "901 °C");
  await bench.field().press("PageDown");
  await bench.shows(() => bench.valueOf("soak"), 891);
  await bench.panel.getByRole("button", { name: /more$/ }).click();
  await bench.shows(() => bench.valueOf("soak"), 892);
  await bench.press("soak", "ArrowUp");
  await bench.openWord("Soak temperature");
  await bench.shows(async () => plain(await bench.field().inputValue()), "893 °C");
  bench.assertNoTrouble();
  await bench.close();
});

test("units switched there and back change nothing", async () => {
  const bench = await BenchPage.ready(browser);
  // A value off the grid of either scale, so that a value read back from its words would show.
  await bench.openWord("Soak temperature");
  await bench.type("1527.3 F");
  await bench.page.keyboard.press("Escape");
  await bench.savedRoute(({ soak }) => soak.temperature_c > 830.5 && soak.temperature_c < 831);
  const kept = await bench.stored(KEYS.bench);
  const [sentences, words] = [await bench.sentences(), await bench.words()];

  for (let round = 0; round < 2; round += 1) {
    await bench.pick("Temperatures", "°F");
    await bench.pick("Lengths", "in");
    await bench.untilStored(KEYS.preferences, (text) => /fahrenheit/.test(text) && /inch/.test(text));
    assert.notDeepEqual(await bench.words(), words);
    // A panel that opens and closes must not write its rounded text back either.
    await bench.openWord("Soak temperature");
    await bench.field().press("Enter");
    await bench.page.keyboard.press("Escape");
    await bench.pick("Temperatures", "°C");
    await bench.pick("Lengths", "mm");
    await bench.untilStored(KEYS.preferences, (text) => /celsius/.test(text) && /millimet/.test(text));
  }
  assert.equal(await bench.stored(KEYS.bench), kept);
  assert.deepEqual(await bench.sentences(), sentences);
  assert.deepEqual(await bench.words(), words);
  bench.assertNoTrouble();
  await bench.close();
});

test("in °F and inch no number of the bench is left in the other unit", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.pick("Temperatures", "°F");
  await bench.pick("Lengths", "in");
  const text = plain(await bench.app.innerText());
  const summaries = await bench.summaries();
  const strays = [text, ...summaries].flatMap((part) => part.match(/[^\n.;:]*(?:\d °C|\d mm\b)[^\n.;:]*/g) ?? []);
  assert.deepEqual(strays, []);
  await bench.close();
});

test("in °F every quenchant, every cold bath and every refusal speaks of °F alone", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.pick("Temperatures", "°F");
  const strays = [];
  const look = async (where) => {
    const text = [plain(await bench.app.innerText()), ...(await bench.summaries())].join("\n");
    strays.push(...(text.match(/[^\n.;:]*\d (?:°C|K\/s)[^\n.;:]*/g) ?? []).map((stray) => `${where}: ${stray}`));
  };
  await bench.openWord("Quenchant");
  const names = await bench.quenchantNames();
  await look("the list");
  for (const name of names) {
    await bench.option(name).click();
    await bench.savedRoute(({ quench }) => quench.medium === name);
    await look(name);
  }
  await bench.page.keyboard.press("Escape");
  await bench.openWord("The steel");
  for (const grade of ["D2", "440C", "S7", "4140"]) {
    await bench.option(grade).click();
    await bench.shows(async () => plain(await bench.word("The steel").textContent()), grade);
    await look(grade);
  }
  assert.deepEqual(strays, []);
  bench.assertNoTrouble();
  await bench.close();
});

test("a temper that the table of D2 does not reach is refused with rounded numbers and their unit", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.takeGrade("D2");
  await bench.press("temper", "PageDown");
  const said = async () => plain(await bench.app.innerText());
  await bench.until(said, (text) => /Tempering table of D2 holds for .* from \d+ to \d+ °C; here it is \d+ °C\./.test(text), "the refusal");
  await bench.pick("Temperatures", "°F");
  await bench.until(said, (text) => /Tempering table of D2 holds for .* from \d+ to \d+ °F; here it is \d+ °F\./.test(text), "the refusal in °F");
  await bench.close();
});

test("units are kept over a reload", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.pick("Temperatures", "°F");
  await bench.pick("Lengths", "in");
  await bench.untilStored(KEYS.preferences, (text) => /fahrenheit/.test(text) && /inch/.test(text));
  await bench.reload();
  assert.equal(await bench.wordsOf("soak"), "1526 °F");
  assert.match((await bench.words()).join(" "), /0\.1\d+ in/);
  await bench.close();
});

test("a grade is found by any of its designations", async () => {
  const bench = await BenchPage.ready(browser);
  for (const [typed, grade] of [["g52986", "52100"], ["1.2842", "O2"], ["1.3505", "52100"], ["100 cr 6", "52100"], ["T31501", "O1"]]) {
    await bench.openWord("The steel");
    await bench.gradeSearch.fill(typed);
    await bench.option(grade).waitFor();
    await bench.option(grade).click();
    await bench.shows(async () => plain(await bench.word("The steel").textContent()), grade);
    assert.equal(await bench.option(grade).getAttribute("aria-selected"), "true");
    await bench.page.keyboard.press("Escape");
    await bench.shows(() => bench.panel.count(), 0, "panels after Escape");
  }
  await bench.openWord("The steel");
  await bench.gradeSearch.fill("unobtainium");
  await bench.shows(() => bench.options.count(), 0, "grades");
  assert.match(await bench.panel.innerText(), /No grade of that name/);
  await bench.savedRoute((route) => route.grade === "O1");
  bench.assertNoTrouble();
  await bench.close();
});

test("the grade that is called just so stands first in the list, before those that are only near", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("The steel");
  for (const [typed, grade] of [["O1", "O1"], ["o2", "O2"], ["1.2842", "90MnCrV8"], ["L6", "L6"], ["51CrV4", "51CrV4"], ["T31501", "O1"]]) {
    await bench.gradeSearch.fill(typed);
    await bench.shows(() => bench.options.first().getAttribute("data-value"), grade, typed);
  }
  await bench.close();
});

test("a grade brings its handbook's route, and one's own can be kept with it", async () => {
  const own = await exampleOf(browser);
  const bench = await BenchPage.ready(browser);
  await bench.openWord("The steel");
  await bench.gradeSearch.fill("O1");
  await bench.option("O1").click();
  const taken = await bench.savedRoute((route) => route.grade === "O1");
  assert.notDeepEqual(taken.soak, own.soak);
  assert.notDeepEqual(taken.prior, own.prior);
  const keep = bench.panel.getByRole("button", { name: "Keep mine with this steel" });
  await keep.click();
  const kept = await bench.savedRoute((route) => route.soak.temperature_c === own.soak.temperature_c);
  assert.deepEqual({ ...kept, grade: "", composition: {} }, { ...own, grade: "", composition: {} });
  assert.deepEqual([kept.grade, kept.composition], ["O1", taken.composition]);
  await bench.shows(() => keep.count(), 0, "offers to keep it again");
  bench.assertNoTrouble();
  await bench.close();
});

test("a grade is found and picked by keys alone", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.word("The steel").press("Enter");
  await bench.shows(() => bench.panelFocus.count(), 1, "fields with the focus");
  await bench.page.keyboard.type("g52986");
  await bench.shows(() => bench.options.count(), 1, "grades");
  await bench.gradeSearch.fill("t31501");
  await bench.option("O1").waitFor();
  await bench.page.keyboard.press("Tab");
  await bench.page.keyboard.press("Enter");
  await bench.shows(async () => plain(await bench.word("The steel").textContent()), "O1");
  await bench.page.keyboard.press("Escape");
  await bench.shows(() => bench.panel.count(), 0, "panels after Escape");
  assert.equal(await bench.focused(), "The steel");
  await bench.close();
});

test("contents typed from a certificate make a steel of its own", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("The steel");
  await bench.panel.getByText("Contents from a certificate").click();
  await bench.type("0,85", "C");
  await bench.shows(async () => plain(await bench.word("The steel").textContent()), "own steel");
  assert.match((await bench.sentences())[0], /of the 0\.85 % carbon/);
  const route = await bench.savedRoute(({ composition }) => composition.c === 0.85);
  assert.equal(route.grade, undefined, "an own steel has no grade");
  await bench.type("99", "C");
  await bench.wrong.first().waitFor();
  assert.match((await bench.sentences())[0], /of the 0\.85 % carbon/);
  bench.assertNoTrouble();
  await bench.close();
});

test("the section changes between blade, flat and round and keeps its thickness", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Section");
  for (const [shape, kept] of [
    ["flat", { shape: "plate", thickness_mm: 4 }],
    ["round", { shape: "round", diameter_mm: 4 }],
    ["blade", { shape: "blade", spine_mm: 4 }],
  ]) {
    await bench.pick("Shape", shape);
    const { section } = await bench.savedRoute((route) => route.section.shape === kept.shape);
    for (const [field, value] of Object.entries(kept)) assert.equal(section[field], value, field);
    assert.ok((await bench.sentences()).length >= 3);
  }
  bench.assertNoTrouble();
  await bench.close();
});

test("every quenchant of the list gives an outcome, a slow one too slow", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Quenchant");
  const names = await bench.quenchantNames();
  assert.ok(names.length > 8, `${names.length} quenchants`);
  for (const name of names) {
    await bench.option(name).click();
    await bench.savedRoute(({ quench }) => quench.medium === name);
    assert.equal(await bench.refusal.count(), 0, name);
    assert.ok((await bench.sentences()).length >= 3, name);
  }
  await bench.option("air_still").click();
  await bench.until(() => bench.sentences(), (all) => /^Too slow\./.test(all[1]), "still air is too slow");
  await bench.page.keyboard.press("Escape");
  await bench.shows(() => bench.panel.count(), 0, "panels after Escape");
  bench.assertNoTrouble();
  await bench.close();
});

test("cold bath and number of tempers change the route and its sentences", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("Cold treatment");
  await bench.pick("Cold treatment", "none");
  await bench.savedRoute(({ cold }) => cold === undefined);
  await bench.pick("Cold treatment", "nitrogen");
  await bench.savedRoute(({ cold }) => cold?.temperature_c === -196);
  await bench.page.keyboard.press("Escape");
  await bench.openWord("Number of tempers");
  for (const count of [1, 3, 6, 0]) {
    await bench.type(String(count), "How many tempers");
    await bench.savedRoute(({ tempers }) => tempers.length === count);
    assert.equal(await bench.refusal.count(), 0);
  }
  assert.match((await bench.sentences()).at(-1), /^As quenched, not tempered/);
  await bench.type("2", "How many tempers");
  await bench.savedRoute(({ tempers }) => tempers.length === 2);
  await bench.page.keyboard.press("Escape");
  await bench.shows(() => bench.handle("temper").isVisible(), true, "the temper handle is back");
  bench.assertNoTrouble();
  await bench.close();
});

for (const grade of ["D2", "440C"]) {
  test(`what no model knows of ${grade} is said in a sentence, and the page goes on`, async () => {
    const bench = await BenchPage.ready(browser);
    await bench.openWord("The steel");
    await bench.option(grade).click();
    await bench.until(() => bench.sentences(), (all) => /No number is given|holds for/.test(all.join(" ")), "the refusal");
    // The soak is still known, and its handle still works.
    const [carbon] = await bench.sentences();
    assert.match(carbon, /carbon is in solution/);
    // Nothing on the page may claim what is not known.
    assert.doesNotMatch(await bench.summary(1), /No nose stands in the way/);
    for (const plot of [0, 1, 2]) assert.notEqual(await bench.summary(plot), "", `plot ${plot} is blank without a word`);
    await bench.page.keyboard.press("Escape");
    await bench.press("soak", "PageDown", "PageDown");
    await bench.until(() => bench.sentences(), ([first]) => first !== carbon, "the soak sentence follows");
    await bench.openWord("The steel");
    await bench.option("52100").click();
    await bench.until(() => bench.sentences(), (all) => all.length === 4, "four sentences again");
    bench.assertNoTrouble();
    await bench.close();
  });
}

test("below A1 nothing hardens: said so, with the last outcome kept pale", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.press("temper", "PageUp", "PageUp");
  await bench.page.locator(".target-ways").waitFor();
  const sentences = await bench.sentences();
  await bench.press("soak", "Home");
  await bench.refusal.waitFor();
  assert.match(await bench.refusal.textContent(), /nothing hardens/);
  assert.deepEqual(await bench.sentences(), sentences);
  // No temper of before is offered for the target of now.
  assert.equal(await bench.page.locator(".target-ways").count(), 0);
  const opacities = await bench.staleOpacities();
  assert.ok(opacities.length >= 4 && opacities.every((value) => value === "0.45"), `${opacities}`);
  // What it says is of the route that it is of, whatever is changed meanwhile.
  await bench.openWord("Target");
  await bench.type("50", "Lowest hardness that will do");
  await bench.page.keyboard.press("Escape");
  await bench.savedRoute(({ target }) => target.least_hrc === 50);
  assert.deepEqual(await bench.sentences(), sentences);
  // Nothing is printed that has no outcome.
  await bench.button("Print the card").click();
  await bench.main.getByText("nothing hardens").waitFor();
  assert.equal(await bench.page.evaluate(() => window.printed), 0);
  await bench.go("Bench");
  await bench.press("soak", ...Array(24).fill("PageUp"));
  await bench.shows(() => bench.refusal.count(), 0, "refusals");
  assert.deepEqual(await bench.staleOpacities(), []);
  bench.assertNoTrouble();
  await bench.close();
});

test("a page that opens with a route below A1 says so, and its handles lead out of it", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.press("soak", "Home");
  await bench.savedRoute(({ soak }) => soak.temperature_c === 600);
  await bench.page.reload();
  await bench.started();
  await bench.refusal.waitFor();
  assert.match(await bench.refusal.textContent(), /nothing hardens/);
  await bench.press("soak", ...Array(24).fill("PageUp"));
  await bench.until(() => bench.sentences(), (all) => all.length === 4, "four sentences");
  bench.assertNoTrouble();
  await bench.close();
});

test("the words of the temperature of a route below A1 are in the scale shown", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.pick("Temperatures", "°F");
  await bench.press("soak", "Home");
  await bench.refusal.waitFor();
  assert.doesNotMatch(await bench.refusal.textContent(), /°C/);
  await bench.close();
});

test("the name of the piece can be emptied and written again", async () => {
  const bench = await BenchPage.ready(browser);
  await bench.openWord("The piece");
  await bench.field().fill("");
  await bench.page.keyboard.press("Escape");
  const word = bench.word("The piece");
  const { width, height } = await word.boundingBox();
  assert.ok(width >= 12 && height >= 12, `a word of ${width} × ${height} px`);
  await bench.openWord("The piece");
  await bench.field().fill("<b>chisel</b>");
  await bench.shows(async () => plain(await word.textContent()), "<b>chisel</b>");
  bench.assertNoTrouble();
  await bench.close();
});

test("a number opens what stands behind it, and gives the focus back", async () => {
  const bench = await BenchPage.ready(browser);
  const numbers = await bench.numbers.all();
  assert.ok(numbers.length >= 8);
  for (const number of numbers) {
    await number.click();
    await bench.opened.waitFor();
    // An equation, or where there is none what it goes by.
    assert.match(await bench.opened.locator(".equation, .formula, dl").first().innerText(), /\S/);
    assert.match(await bench.openedFigure.innerText(), /\d/);
    await bench.page.keyboard.press("Escape");
    await bench.shows(() => bench.opened.isVisible(), false, "dialog");
    assert.equal(await number.evaluate((element) => element === document.activeElement), true);
  }
  bench.assertNoTrouble();
  await bench.close();
});

test("on a phone a panel lies inside the window and its fields are large enough to press", async () => {
  const bench = await BenchPage.ready(browser, { viewport: PHONE, hasTouch: true, isMobile: true });
  for (const name of ["The piece", "The steel", "Section", "Furnace", "Quenchant", "Target"]) {
    await bench.word(name).tap();
    await bench.panel.waitFor();
    const { x, y, width, height } = await bench.panel.boundingBox();
    assert.ok(x >= 0 && y >= 0 && x + width <= PHONE.width && y + height <= PHONE.height, `${name}: ${x}, ${y}, ${width}, ${height}`);
    const small = await bench.panelControls.evaluateAll((all) =>
      all.filter((one) => one.getBoundingClientRect().height < 36).map((one) => one.textContent || one.ariaLabel),
    );
    assert.deepEqual(small, [], name);
    await bench.page.keyboard.press("Escape");
    await bench.shows(() => bench.panel.count(), 0, "panels");
  }
  bench.assertNoTrouble();
  await bench.close();
});

test("the furnace's thermocouple widens its band, and its offset says what to set", async () => {
  const bench = await BenchPage.ready(browser);
  const furnace = bench.word("Furnace");
  assert.match(await furnace.innerText(), /±8\s°C/);
  await bench.openWord("Furnace");
  await bench.option("class_2").click();
  await bench.until(() => furnace.innerText(), (text) => /±10\s°C/.test(text), "the wider band");
  await bench.type("-6", "The piece is hotter than the furnace reads by");
  await bench.until(() => bench.panel.innerText(), (text) => /let it read 836\s°C/.test(text), "the reading to set");
  bench.assertNoTrouble();
  await bench.close();
});
