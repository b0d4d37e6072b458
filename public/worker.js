// A second thread of the program: loads it from the addresses in the first message. The program sees
// that there is no page, and answers what it is asked.
"use strict";
addEventListener(
  "message",
  ({ data: { script, wasm, lock } }) => {
    // Free again when this thread has ended, however that was: the page waits for it.
    navigator.locks?.request(lock, () => (postMessage("held"), new Promise(() => {})));
    import(script)
      .then((program) => program.default({ module_or_path: wasm }))
      .catch(() => postMessage("gave up"));
  },
  { once: true },
);
