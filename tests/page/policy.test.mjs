// The page asks its own host alone and runs nothing that stands in its document: by its policy, and by
// what it does.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { BenchPage, PAGE_URL, launch } from "./bench_page.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** The sources that each directive of a policy allows. */
const directives = (policy) =>
  new Map(policy.split(";").map((part) => part.trim().split(/\s+/)).map(([name, ...sources]) => [name, sources]));

test("the policy allows the page's own host alone, and nothing written into the document", async () => {
  const text = await (await fetch(PAGE_URL)).text();
  const [, policy] = /<meta http-equiv="Content-Security-Policy" content="([^"]+)">/.exec(text);
  const allowed = directives(policy);
  for (const name of ["default-src", "base-uri", "form-action"]) assert.deepEqual(allowed.get(name), ["'none'"], name);
  for (const [name, sources] of allowed) {
    // `data:` and `blob:` are what the page has made itself, and only as pictures.
    const own = ["'none'", "'self'", ...(name === "script-src" ? ["'wasm-unsafe-eval'"] : []), ...(name === "img-src" ? ["data:", "blob:"] : [])];
    assert.deepEqual(sources.filter((source) => !own.includes(source)), [], name);
  }
  // It stands before all that it is about.
  assert.ok(text.indexOf("Content-Security-Policy") < Math.min(...["<link", "<script", "<style"].map((tag) => text.indexOf(tag)).filter((at) => at >= 0)));
  for (const [tag] of text.matchAll(/<script[^>]*>/g)) assert.match(tag, / src="/);
  assert.doesNotMatch(text, /<style|<[^>]* (style|on\w+)=|javascript:/i);
  for (const [, address] of text.matchAll(/(?:href|src)="([^"]*)"/g)) assert.doesNotMatch(address, /^(\w+:|\/\/)/);
});

test("what is slipped into the document does not run, and no other host is reached", async () => {
  const bench = await BenchPage.ready(browser);
  const asked = [];
  bench.page.context().on("request", (request) => asked.push(request.url()));
  const came = await bench.page.evaluate(async () => {
    const put = (name, text) => document.body.append(Object.assign(document.createElement(name), { textContent: text }));
    put("script", "window.hasRun = true");
    put("style", "body { opacity: 0.5 }");
    document.body.insertAdjacentHTML("beforeend", '<p id="slipped" style="color: red" onclick="window.hasRun = true">x</p>');
    const slipped = document.getElementById("slipped");
    slipped.click();
    const fails = (act) => Promise.resolve().then(act).then(() => false, () => true);
    const loads = (name, address) =>
      new Promise((done) => {
        const made = Object.assign(document.createElement(name), { src: address, onload: () => done(false), onerror: () => done(true) });
        document.body.append(made);
      });
    return {
      ran: window.hasRun ?? false,
      opacity: getComputedStyle(document.body).opacity,
      colour: slipped.style.color,
      elsewhere: await Promise.all([fails(() => fetch("http://other.invalid/a")), loads("img", "http://other.invalid/b"), loads("script", "http://other.invalid/c")]),
      socket: await fails(() => new Promise((open, failed) => Object.assign(new WebSocket("ws://other.invalid/d"), { onopen: open, onerror: failed }))),
    };
  });
  assert.deepEqual(came, { ran: false, opacity: "1", colour: "", elsewhere: [true, true, true], socket: true });
  for (const what of ["script-src-elem inline", "style-src-elem inline", "style-src-attr inline", "script-src-attr inline", "connect-src http://other", "img-src http://other", "script-src-elem http://other"]) {
    assert.ok(bench.troubles.some((trouble) => trouble.startsWith(`refused by the policy: ${what}`)), `${what} among ${bench.troubles}`);
  }
  await bench.close();
});

test("a whole visit asks no other host, neither the page nor its threads nor what keeps it", async () => {
  const bench = await BenchPage.open(browser, { serviceWorkers: "allow" });
  const asked = new Set();
  bench.page.context().on("request", (request) => asked.add(request.url()));
  await bench.started();
  await bench.tableOfQuenches.waitFor();
  await bench.mapArrives();
  await bench.keep();
  await bench.logRun();
  await bench.goesEverywhere();
  await bench.numberOf(0).click();
  await bench.opened.waitFor();
  await bench.page.keyboard.press("Escape");
  await bench.toCard();
  assert.ok([...asked].some((address) => address.endsWith("/sw.js")), [...asked].join("\n"));
  const own = new URL(PAGE_URL).origin;
  assert.deepEqual([...asked].filter((address) => new URL(address).origin !== own && !/^(blob|data):/.test(address)), []);
  bench.assertNoTrouble();
  await bench.close();
});
