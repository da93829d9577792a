// Starts the page, then looks after the offline copy.
//
// To the page, as events on window:
//   emberloam:offline-ready   once, when the first offline copy is in place
//   emberloam:update-waiting  when a newer version is stored and waits
//   emberloam:started         when the page stands
// From the page, as events on window:
//   emberloam:mounted         it stands
//   emberloam:use-update      the person wants the newer version now

const trouble = document.getElementById("boot-trouble");

function show(message) {
  trouble.textContent = message;
  trouble.hidden = false;
}

function tell(name) {
  window.dispatchEvent(new CustomEvent(`emberloam:${name}`));
}

async function startPage() {
  if (typeof WebAssembly !== "object") {
    show(
      "This browser can't run Emberloam: it has no WebAssembly, or it is turned off. " +
        "Use a newer browser, or turn WebAssembly on.",
    );
    return false;
  }
  try {
    // Imported here, not at the top: a file that fails to load is then reported too. Meanwhile
    // `language.js` gets the words: the page is first shown in the reader's language.
    const [app] = await Promise.all([import("./app.js"), window.emberloamLanguage]);
    const mounted = new Promise((resolve) => window.addEventListener("emberloam:mounted", resolve, { once: true }));
    await app.default();
    // A page that keeps something first fetches what reads it. The offline copy must not wait
    // for ever: it may bring the cure.
    await Promise.race([mounted, new Promise((resolve) => setTimeout(resolve, 10_000))]);
    return true;
  } catch (reason) {
    console.error(reason);
    show("Emberloam could not start. Load the page again. What you typed before is still kept on this device.");
    return false;
  }
}

async function keepOfflineCopy(started) {
  const workers = navigator.serviceWorker;
  // Missing when the page is not on https or localhost, and in some private windows. A page that
  // was opened as a file is its own copy.
  if (!workers || location.protocol === "file:") return;

  let controlled = Boolean(workers.controller);
  let asked = false;
  workers.addEventListener("controllerchange", () => {
    if (asked) location.reload();
    else if (!controlled) tell("offline-ready");
    controlled = true;
  });

  const registration = await workers.register("service-worker.js", { updateViaCache: "none" });

  const useUpdate = () => {
    if (!registration.waiting) return;
    asked = true;
    registration.waiting.postMessage("skip-waiting");
  };
  const offer = () => {
    // A page that did not start has nothing to lose, and the newer version may be the cure.
    if (started) tell("update-waiting");
    else useUpdate();
  };
  window.addEventListener("emberloam:use-update", useUpdate);

  if (registration.waiting && workers.controller) offer();
  registration.addEventListener("updatefound", () => {
    const incoming = registration.installing;
    incoming.addEventListener("statechange", () => {
      if (incoming.state === "installed" && workers.controller) offer();
    });
  });
}

// After the start, a fault in the working must not leave a page that only looks alive.
window.addEventListener("error", (event) => {
  if (event.error?.name === "RuntimeError") {
    show("Something went wrong inside Emberloam. What you typed is kept. Load the page again.");
  }
});

const started = await startPage();
if (started) tell("started");
try {
  await keepOfflineCopy(started);
} catch (reason) {
  // The page works without its offline copy; there is nothing the person must do.
  console.warn("No offline copy could be stored:", reason);
}
