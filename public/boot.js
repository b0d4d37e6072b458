// Starts the program, and speaks for it when it cannot: plain DOM, no library, because it must work
// when nothing else does. index.html names the files to load in this script's data attributes.
"use strict";
(() => {
  const PREFERENCES = "recalesce.preferences";
  const FRESH = "recalesce.fresh";
  const root = document.documentElement;
  const { script, wasm, worker, style, offline, decimals } = document.currentScript.dataset;
  const absolute = (address) => new URL(address, document.baseURI).href;
  // Where the program finds itself again for its second thread.
  Object.assign(root.dataset, { script: absolute(script), wasm: absolute(wasm), worker: absolute(worker) });

  // Storage throws where cookies are blocked; the page then does without.
  const guarded = (use) => {
    try {
      return use();
    } catch {
      return null;
    }
  };

  // Before the first paint.
  const stored = guarded(() => localStorage.getItem(PREFERENCES)) ?? "";
  const chosen = /"theme":\s*"(light|dark)"/.exec(stored)?.[1];
  root.dataset.theme = chosen ?? (matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light");

  // Numbers have a decimal comma where that was chosen; at first, where the browser's language has it.
  const wanted = /"decimal_comma":\s*(true|false)/.exec(stored)?.[1];
  if (wanted) root.dataset.wanted = wanted;
  const comma = wanted ?? String((0.5).toLocaleString(navigator.language)[1] === ",");
  const showComma = (isShown) => import(absolute(decimals)).then(({ show }) => show(isShown));
  window.decimalComma = (isShown) => {
    root.dataset.wanted = isShown;
    return showComma(isShown);
  };

  // "Start fresh" was pressed: the program reads this once and opens with its own first piece.
  if (guarded(() => sessionStorage.getItem(FRESH))) {
    guarded(() => sessionStorage.removeItem(FRESH));
    root.dataset.start = "fresh";
  }

  const element = (name, properties, ...children) => {
    const made = Object.assign(document.createElement(name), properties);
    made.append(...children);
    return made;
  };
  const button = (label, act) => {
    const made = element("button", { type: "button", textContent: label });
    made.addEventListener("click", act);
    return made;
  };
  const reload = () => location.reload();
  const startFresh = () => {
    guarded(() => sessionStorage.setItem(FRESH, "1"));
    // What the address carries may be what went wrong.
    history.replaceState(null, "", location.pathname + location.search);
    reload();
  };

  let over = false;
  const note = (className, sentence, detail, ...buttons) => {
    if (over) return;
    over = true;
    document.getElementById("boot")?.remove();
    const made = element(
      "div",
      { className: `boot-note ${className}`, role: "alert" },
      element("p", {}, sentence),
      element("p", { className: "boot-buttons" }, ...buttons),
    );
    if (detail) {
      made.append(
        element("details", {}, element("summary", {}, "What the browser said"), element("pre", {}, detail)),
      );
    }
    document.body.append(made);
  };

  const stopped = (detail) =>
    note(
      "boot-stopped",
      "Something went wrong. Your last saved work is kept.",
      detail,
      button("Reload", reload),
      button("Start fresh", startFresh),
    );
  // A trap of the program. A panic sends the event below first; a trap without one shows only here.
  const isTrap = (error) => typeof WebAssembly === "object" && error instanceof WebAssembly.RuntimeError;

  const cannotStart = (error) => {
    console.error(error);
    if (isTrap(error)) return stopped(String(error));
    const sentence =
      typeof WebAssembly === "object"
        ? "The page could not be loaded whole. Check the connection and load it again."
        : "This browser has no WebAssembly, which the page computes with. Use a newer browser, or allow WebAssembly in this one.";
    note("boot-failed", sentence, String(error), button("Reload", reload));
  };
  addEventListener("recalesce-panic", (event) => stopped(event.detail ? String(event.detail) : ""));
  addEventListener("error", (event) => isTrap(event.error) && stopped(String(event.error)));
  addEventListener("unhandledrejection", (event) => isTrap(event.reason) && stopped(String(event.reason)));

  // The style of what is loaded later. The program asks before it shows any of that; a load that has
  // failed can be asked for again.
  let styled;
  window.laterStyle = () =>
    (styled ??= new Promise((loaded, failed) => {
      const onerror = () => {
        styled = null;
        link.remove();
        failed();
      };
      const link = element("link", { rel: "stylesheet", href: absolute(style), onload: loaded, onerror });
      document.head.append(link);
    }));

  const bodyParsed = new Promise((parsed) => {
    if (document.readyState !== "loading") parsed();
    else addEventListener("DOMContentLoaded", parsed, { once: true });
  });
  // The module is fetched while the page is parsed, and started when there is a body to mount in.
  const module = import(absolute(script));
  module.catch(() => {});
  bodyParsed
    .then(() => comma === "true" && showComma(true).catch(() => {}))
    .then(() => module)
    .then((program) => program.default({ module_or_path: absolute(wasm) }))
    .then(() => {
      document.getElementById("boot")?.remove();
      root.dataset.started = "";
      // One chart in somebody else's page keeps nothing.
      if ("serviceWorker" in navigator && !location.hash.includes("&show=")) {
        (window.requestIdleCallback ?? setTimeout)(() => import(absolute(offline)).catch(() => {}));
      }
    })
    .catch(cannotStart);
})();
