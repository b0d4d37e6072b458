// Without a network the page opens whole from what the browser keeps; a newer version waits until it is
// asked for, and no page ever gets files of two.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { after, before, beforeEach, test } from "node:test";
import { BenchPage, KEYS, PAGE_URL, launch } from "./bench_page.mjs";

const BELOW = "/some/where/";
const TYPES = { css: "text/css", html: "text/html", js: "text/javascript", png: "image/png", svg: "image/svg+xml", wasm: "application/wasm", webmanifest: "application/manifest+json", woff2: "font/woff2" };

const sumOf = (content) => `sha256-${createHash("sha256").update(content).digest("base64")}`;

/** The published page as a map from path to content, with its worker apart. */
async function published() {
  const get = async (path) => {
    const response = await fetch(new URL(path, PAGE_URL));
    assert.equal(response.status, 200, path);
    return Buffer.from(await response.arrayBuffer());
  };
  const worker = (await get("sw.js")).toString();
  const [, list] = /const FILES = (\{.*?\});/.exec(worker);
  const files = new Map();
  for (const [path, sum] of Object.entries(JSON.parse(list))) {
    const content = await get(path);
    assert.equal(sumOf(content), sum, path);
    files.set(path, content);
  }
  return { files, worker, list };
}

/** The worker of other files: with their list, and a version of its own. */
const workerOf = ({ worker, list }, files, version) => {
  const sums = Object.fromEntries([...files].map(([path, content]) => [path, sumOf(content)]));
  return worker.replace(list, JSON.stringify(sums)).replace(/const VERSION = "\w+"/, `const VERSION = "${version}"`);
};

/** A later version of the page: its script and its parts have other names, and its title says so. */
function later(site, version) {
  const files = new Map();
  const renamed = new Map();
  for (const path of site.files.keys()) {
    if (/\/parts\/|assets\/recalesce-.*js$/.test(path)) renamed.set(path.replace("assets/", ""), path.replace("assets/", "").replace("-", `-${version}-`));
  }
  for (const [path, content] of site.files) {
    let now = content;
    if (/\.js$/.test(path) || path === "./") {
      let text = content.toString();
      for (const [old, name] of renamed) text = text.replaceAll(old, name);
      now = Buffer.from(text.replace("<title>Recalesce</title>", `<title>Recalesce ${version}</title>`));
    }
    const own = path.replace("assets/", "");
    files.set(renamed.has(own) ? `assets/${renamed.get(own)}` : path, now);
  }
  return { files, worker: workerOf(site, files, version) };
}

let browser, server, address, first, second;
/** What is served, by path; what breaks on the way; what was asked for. */
let served, broken, asked;
before(async () => {
  browser = await launch();
  first = await published();
  second = later(first, "second");
  server = createServer((request, response) => {
    const { pathname } = new URL(request.url, "http://localhost");
    const path = pathname.startsWith(BELOW) ? pathname.slice(BELOW.length) : undefined;
    asked.push(path);
    const content = path === "sw.js" ? served.worker : served.files.get(path || "./");
    if (content === undefined || broken.has(path)) return response.writeHead(404).end();
    const ending = /\.(\w+)$/.exec(path)?.[1] ?? "html";
    response.writeHead(200, { "Content-Type": TYPES[ending], "Cache-Control": "no-cache" }).end(content);
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  address = `http://127.0.0.1:${server.address().port}${BELOW}`;
});
after(async () => {
  server.close();
  await browser.close();
});
beforeEach(() => {
  served = first;
  broken = new Set();
  asked = [];
});

/** A first visit, until the page is kept. */
async function visited() {
  const bench = await BenchPage.open(browser, { url: address, serviceWorkers: "allow" });
  await bench.started();
  await kept(bench);
  return bench;
}

/** Waits until the browser keeps the page whole. */
const kept = (bench) =>
  bench.until(
    () =>
      bench.page.evaluate(async () => {
        const registration = await navigator.serviceWorker.getRegistration();
        return registration?.active?.state === "activated" && navigator.serviceWorker.controller !== null;
      }),
    (isKept) => isKept,
    "the page is kept",
  );

/** Another tab of the same browser. */
async function tab(bench) {
  const other = new BenchPage(await bench.page.context().newPage(), address);
  await other.page.goto(address);
  await other.started();
  return other;
}

const lookForNew = ({ page }) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update().catch(() => {});
  });

const partsOf = ({ page }) =>
  page.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name).filter((name) => name.includes("/assets/parts/")));

const storesOf = ({ page }) => page.evaluate(() => caches.keys());

test("after the first visit the page opens whole without a network, below a path", async () => {
  const bench = await visited();
  await bench.page.context().setOffline(true);
  asked = [];
  await bench.page.reload();
  await bench.started();
  await bench.goesEverywhere();
  assert.deepEqual(await bench.page.evaluate(async () => (await document.fonts.load("16px Archivo")).map(({ status }) => status)), ["loaded"]);
  assert.deepEqual(asked, []);
  // From the address of its file as well.
  await bench.page.goto(`${address}index.html`);
  await bench.started();
  assert.deepEqual(bench.troubles.filter((trouble) => !trouble.includes("ERR_INTERNET_DISCONNECTED")), []);
  await bench.close();
});

test("what is kept stands under the page's own path", async () => {
  const bench = await visited();
  const [scope] = await bench.page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).map((one) => one.scope));
  assert.equal(scope, address);
  const stores = await storesOf(bench);
  assert.equal(stores.length, 1);
  assert.ok(stores[0].startsWith(`recalesce ${address} `), stores[0]);
  await bench.close();
});

test("a new version is announced and not forced; asked for, it comes with what was on the bench", async () => {
  const bench = await visited();
  await bench.press("soak", "ArrowUp");
  served = second;
  await lookForNew(bench);
  await bench.newVersion.waitFor();
  assert.deepEqual(await bench.accessibilityFaults(), []);
  await bench.page.reload();
  await bench.started();
  assert.equal(await bench.page.title(), "Recalesce");
  await bench.newVersion.waitFor();

  // A change that has not been written yet is kept as well.
  await bench.press("soak", "ArrowUp");
  await bench.button("Load it").click();
  await bench.page.waitForFunction(() => document.title === "Recalesce second");
  await bench.started();
  assert.equal(await bench.newVersion.count(), 0);
  const { route } = JSON.parse(await bench.page.evaluate((key) => localStorage.getItem(key), KEYS.bench)).routes[0];
  assert.ok(route.soak.temperature_c > 830);
  await bench.goesEverywhere();
  const parts = await partsOf(bench);
  assert.ok(parts.length > 0 && parts.every((name) => name.includes("-second-")), parts.join());
  await bench.close();
});

test("another tab goes on with the version that it was loaded with, and all of its parts", async () => {
  const bench = await visited();
  const other = await tab(bench);
  served = second;
  await lookForNew(bench);
  await other.newVersion.waitFor();
  await bench.button("Load it").click();
  await bench.page.waitForFunction(() => document.title === "Recalesce second");
  await bench.started();

  // The host has no file of the first version any more.
  assert.equal(await other.page.title(), "Recalesce");
  for (const path of first.files.keys()) {
    if (!path.startsWith("assets/")) continue;
    const status = await other.page.evaluate(async (url) => (await fetch(url)).status, path);
    assert.equal(status, 200, path);
  }
  await other.goesEverywhere();
  assert.ok((await partsOf(other)).every((name) => !name.includes("-second-")));
  await other.button("Load it").click();
  await other.page.waitForFunction(() => document.title === "Recalesce second");
  await bench.close();
});

test("versions before go when no page needs them", async () => {
  const bench = await visited();
  served = second;
  await lookForNew(bench);
  await bench.newVersion.waitFor();
  await bench.button("Load it").click();
  await bench.page.waitForFunction(() => document.title === "Recalesce second");
  await bench.started();
  await bench.page.goto("about:blank");
  await bench.page.goto(address);
  await bench.started();
  await bench.until(() => storesOf(bench), (stores) => stores.length === 1 && stores[0].endsWith(" second"), "one store");
  await bench.close();
});

test("a version that does not come whole is not taken, and the one before stays whole", async () => {
  const bench = await visited();
  served = second;
  const missing = [...second.files.keys()].find((path) => path.includes("split_decide"));
  broken.add(missing);
  await lookForNew(bench);
  await bench.until(() => asked.includes(missing), (was) => was, "the missing file is asked for");
  await bench.until(() => storesOf(bench), (stores) => stores.length === 1, "the half of it is gone");
  assert.equal(await bench.newVersion.count(), 0);

  // One that is whole by its names and not by its content.
  const page = Buffer.from(second.files.get("./").toString().replace("second", "third"));
  served = { files: new Map([...second.files, ["./", page]]), worker: second.worker };
  broken.clear();
  await lookForNew(bench);
  await bench.until(() => storesOf(bench), (stores) => stores.length === 1, "the half of it is gone");
  assert.equal(await bench.newVersion.count(), 0);

  await bench.page.context().setOffline(true);
  await bench.page.reload();
  await bench.started();
  assert.equal(await bench.page.title(), "Recalesce");
  await bench.goesEverywhere();

  await bench.page.context().setOffline(false);
  served = second;
  await lookForNew(bench);
  await bench.newVersion.waitFor();
  await bench.close();
});

test("a page whose parts are on their way while the host gets a new version has those of its own", async () => {
  const bench = await visited();
  await bench.page.close();
  const other = new BenchPage(await bench.page.context().newPage(), address);
  await other.page.goto(address, { waitUntil: "commit" });
  served = second;
  await other.started();
  await lookForNew(other);
  await other.newVersion.waitFor();
  await other.goesEverywhere();
  assert.ok((await partsOf(other)).every((name) => !name.includes("-second-")));
  assert.equal(await other.page.title(), "Recalesce");
  await other.close();
});

test("a thread that is started again while the host has a newer version is of the version of its page", async () => {
  const bench = await visited();
  await bench.mapArrives();
  served = second;
  await lookForNew(bench);
  await bench.newVersion.waitFor();
  const next = bench.page.waitForEvent("worker");
  await bench.page.workers()[0].evaluate(() => close()).catch(() => {});
  await next;
  await bench.takeGrade("O1");
  await bench.mapArrives();
  assert.match(await bench.summary(0), /^Phase map: /);
  bench.assertNoTrouble();
  await bench.close();
});

test("the development server's worker removes what a published page has left on its port, and itself", async () => {
  const bench = await visited();
  const page = Buffer.from(first.files.get("./").toString().replace("<title>Recalesce</title>", "<title>In work</title>"));
  const worker = await readFile(new URL("../../xtask/src/no_worker.js", import.meta.url), "utf8");
  served = { files: new Map([...first.files, ["./", page]]), worker };
  await lookForNew(bench);
  await bench.page.waitForFunction(() => document.title === "In work");
  await bench.started();
  const left = () => bench.page.evaluate(async () => [(await navigator.serviceWorker.getRegistrations()).length, (await caches.keys()).length]);
  await bench.until(left, ([workers, stores]) => workers === 0 && stores === 0, "nothing is left");
  await bench.close();
});

test("the page does without where service workers are not allowed", async () => {
  const bench = await BenchPage.open(browser, {
    url: address,
    serviceWorkers: "allow",
    before: (page) =>
      page.addInitScript(() => {
        ServiceWorkerContainer.prototype.register = () => Promise.reject(new DOMException("denied", "SecurityError"));
      }),
  });
  await bench.started();
  await bench.goesEverywhere();
  bench.assertNoTrouble();
  await bench.close();
});

test("the page can be installed", async () => {
  const manifest = JSON.parse(first.files.get("app.webmanifest"));
  assert.equal(manifest.start_url, "./");
  for (const { src } of manifest.icons) assert.ok(first.files.has(src), src);
  assert.match(first.files.get("./").toString(), /<link rel="manifest" href="app.webmanifest">/);
});
