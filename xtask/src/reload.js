// Asks the development server for the page's revision, and reloads when it is another one.
(() => {
  const address = new URL("revision", document.currentScript.src);
  let first = null;
  const ask = async () => {
    try {
      const revision = await (await fetch(address, { cache: "no-store" })).text();
      first ??= revision;
      if (revision !== first) return location.reload();
    } catch {
      // The server is down: ask again until it is back.
    }
    setTimeout(ask, 600);
  };
  ask();
})();
