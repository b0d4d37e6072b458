// Keeps the page for when there is no network, and says when a newer version of it is ready. Which version
// is used is the user's choice: nothing is loaded anew before they ask. Plain DOM, like boot.js.
const ASK_AGAIN_MS = 3_600_000;
const workers = navigator.serviceWorker;

let registration;
// Whether the new version was asked for on this page; the others go on with theirs.
let isAsked = false;
const line = Object.assign(document.createElement("div"), { role: "status" });
document.body.prepend(line);

const button = (label, act) => {
  const made = Object.assign(document.createElement("button"), { type: "button", className: "press", textContent: label });
  made.addEventListener("click", act);
  return made;
};
const load = () => {
  isAsked = true;
  // Where another page has asked already, this one need only be loaded anew.
  if (registration.waiting) registration.waiting.postMessage("take over");
  else location.reload();
};
const announce = () => {
  const words = Object.assign(document.createElement("span"), { textContent: "A new version is ready." });
  const said = Object.assign(document.createElement("p"), { className: "message version" });
  said.append(words, button("Load it", load), button("Later", () => line.replaceChildren()));
  line.replaceChildren(said);
};
const follow = (worker) =>
  worker?.addEventListener("statechange", () => worker.state === "installed" && workers.controller && announce());

workers.addEventListener("controllerchange", () => isAsked && location.reload());
try {
  registration = await workers.register(new URL("sw.js", document.baseURI), { updateViaCache: "none" });
  if (registration.waiting && workers.controller) announce();
  follow(registration.installing);
  registration.addEventListener("updatefound", () => follow(registration.installing));
  // A page may stay open for days.
  let asked_ms = Date.now();
  document.addEventListener("visibilitychange", () => {
    // A clock that was set back counts as well.
    if (document.hidden || Math.abs(Date.now() - asked_ms) < ASK_AGAIN_MS) return;
    asked_ms = Date.now();
    registration.update().catch(() => {});
  });
} catch {
  // Not allowed here, or not reached: the page goes on without.
}
