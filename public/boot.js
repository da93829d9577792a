// Starts the page, then looks after the offline copy.
//
// To the page, as events on window:
//   emberloam:offline-ready   once, when the first offline copy is in place
//   emberloam:update-waiting  when a newer version is stored and waits
//   emberloam:started         when the page stands
// From the page, as events on window:
//   emberloam:mounted         it stands
//   emberloam:use-update      the person wants the newer version now
//   emberloam:stopped         a fault has ended the program
//   emberloam:keep            a file that is to be kept offline
//   emberloam:erased          the person wants nothing kept
//
// A fault ends the program for good. The page says so and shows the text, to be copied. Loaded
// again it starts as ever. Did it stop twice over the same kept report, or did the browser end it
// while it took the report in, it starts without that report, and offers it.

const OFFLINE = "service-worker.js";

// All that becomes a part of the page, or runs beside it, goes through here. The framework makes
// its parts of texts that stand in the program; none of them runs anything.
globalThis.trustedTypes?.createPolicy("default", {
  createHTML: (html) => (/<(script|iframe)|<[^>]*\son\w+\s*=|javascript:/i.test(html) ? null : html),
  createScriptURL: (url) => {
    // The page in one file holds its worker in itself.
    const own = location.protocol === "file:" && url.startsWith("blob:");
    return own || [OFFLINE, "open-worker.js"].includes(url) ? url : null;
  },
});

const trouble = document.getElementById("boot-trouble");

function show(message) {
  trouble.textContent = message;
  trouble.hidden = false;
}

function tell(name, detail) {
  window.dispatchEvent(new CustomEvent(`emberloam:${name}`, { detail }));
}

// The names in `app/src/store.rs`.
const KEPT = emberloamName("kept");
const OWN = emberloamName("own");
const SET_ASIDE = emberloamName("set-aside");
// What the program stopped over, as long as the tab is open: what was kept, and what stood in
// the box.
const STOPPED = emberloamName("stopped");
// There while the program takes in what is kept, or a long text.
const AT_WORK = emberloamName("at-work");
// The page was loaded again because its copy was healed.
const HEALED = emberloamName("healed");

/** What a storage holds. A browser may refuse it. */
function recall(storage, name) {
  try {
    return window[storage].getItem(name);
  } catch {
    return null;
  }
}

/** Puts something into a storage, or takes it out; whether that was done. */
function remember(storage, name, value) {
  try {
    if (value === null) window[storage].removeItem(name);
    else window[storage].setItem(name, value);
    return true;
  } catch {
    return false;
  }
}

/** What is kept for this tab, or else for any. */
function latest() {
  const own = recall("sessionStorage", OWN);
  return own === null ? recall("localStorage", KEPT) : own.split("\n").slice(2).join("\n");
}

/** What is kept: the text and the answers. Nothing, when it can't be read. */
function unfold(json) {
  try {
    return JSON.parse(json) ?? {};
  } catch {
    return {};
  }
}

/** The text as the box shows it. */
const inBox = (text = "") => text.replace(/\r\n?/g, "\n");

let offered;

/** Shows a text with what can be done with it. */
function offer(text, acts) {
  offered?.remove();
  offered = document.createElement("div");
  offered.id = "stopped";
  if (text) {
    const box = document.createElement("textarea");
    box.readOnly = true;
    box.rows = 10;
    box.value = text;
    box.setAttribute("aria-label", "Your text");
    offered.append(box);
    acts["Copy the text"] = () => {
      box.select();
      document.execCommand("copy");
    };
  }
  for (const [name, act] of Object.entries(acts)) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = name;
    button.addEventListener("click", act);
    offered.append(button, " ");
  }
  trouble.after(offered);
}

/** Takes away what was offered, for good. */
function forget() {
  remember("sessionStorage", STOPPED, null);
  offered?.remove();
  trouble.hidden = true;
}

let over = false;

/** The program has stopped. */
function stop() {
  if (over) return;
  over = true;
  atWork(false);
  const kept = latest();
  const own = inBox(unfold(kept).text);
  const text = document.getElementById("report-text")?.value || own;
  const again = kept !== null && text === own && unfold(recall("sessionStorage", STOPPED)).kept === kept;
  // What is kept comes back by itself.
  const stopped = text === own ? { kept, again } : { kept, again, text };
  const safe = remember("sessionStorage", STOPPED, JSON.stringify(stopped)) || text === own;
  show(
    "Something went wrong inside Emberloam, and it has stopped. " +
      (safe
        ? "What you typed is kept. Load the page again to go on."
        : "Your text is too long to be kept: copy it, then load the page again."),
  );
  // What still looks alive answers no more.
  document.getElementById("page").inert = true;
  offer(text, { "Load the page again": () => location.reload() });
  scrollTo(0, 0);
}

// A piece that was opened once is kept with the offline copy.
window.addEventListener("emberloam:keep", ({ detail }) =>
  navigator.serviceWorker?.ready.then(({ active }) => active?.postMessage({ keep: detail })),
);

window.addEventListener("emberloam:stopped", stop);
window.addEventListener("emberloam:erased", forget);
// A fault of which the program itself can't tell, such as a full stack.
const isFault = (reason) =>
  reason?.name === "RuntimeError" || /call stack|recursion/.test(reason?.message);
window.addEventListener("error", ({ error }) => isFault(error) && stop());
window.addEventListener("unhandledrejection", ({ reason }) => isFault(reason) && stop());

/** The program takes something in, or has done so. */
function atWork(on) {
  remember("sessionStorage", AT_WORK, on ? "1" : null);
  remember("localStorage", AT_WORK, on ? String(Date.now()) : null);
}

/** Whether the program was at its work when it ended: in this tab, or in one that is gone. */
function wasAtWork() {
  const since = recall("localStorage", AT_WORK);
  return recall("sessionStorage", AT_WORK) !== null || (since !== null && Date.now() - since > 10_000);
}

/** A long text is read in steps, with turns in between. */
const untilRead = () =>
  setTimeout(() => (document.querySelector("#work:not([hidden])") ? untilRead() : atWork(false)), 200);

/** Before the start: puts aside what the program stopped over twice, or did not come back from. */
function putAside({ kept, again }) {
  kept = wasAtWork() ? latest() : again && kept;
  if (!kept) return;
  remember("localStorage", SET_ASIDE, kept);
  remember("sessionStorage", OWN, null);
  if (recall("localStorage", KEPT) === kept) remember("localStorage", KEPT, null);
  remember("sessionStorage", STOPPED, JSON.stringify({ aside: kept }));
}

/** After the start: offers what the program stopped over, and did not come back by itself. */
function offerAgain({ aside, text }) {
  const report = { emberloam: 1, text, ...unfold(aside) };
  if (!report.text && !aside) return;
  show(
    aside
      ? "Emberloam stopped over the report that was kept, so it has started without it. Here is its text. Save the report as a file to open it later."
      : "Emberloam stopped over this text, so it is not in the box. Copy it if you still need it.",
  );
  const save = `report.emberloam.json\napplication/json\n${JSON.stringify(report)}`;
  offer(report.text, { "Save as a file": () => tell("save", save), Close: forget });
}

// The frame in index.html: it can be read, and its box filled, while the program comes.
const ground = document.getElementById("ground");
const box = document.getElementById("report-text");
let pasted = false;
box.addEventListener("paste", () => (pasted = true), { once: true });

let pressed;
const early = ({ target }) => (pressed = target.closest("button")?.id);
ground.addEventListener("click", early);

/** The program has taken the frame over, with what is in its box; what was pressed too soon counts. */
function takenOver() {
  ground.removeEventListener("click", early);
  if (pressed) document.getElementById(pressed)?.click();
  ground.classList.remove("waiting", "restored");
  if (pasted) box.dispatchEvent(new ClipboardEvent("paste", { bubbles: true }));
}
window.addEventListener("emberloam:mounted", takenOver, { once: true });

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
    if (over || isFault(reason)) stop();
    else if ((await heal()) && recall("sessionStorage", HEALED) === null) {
      remember("sessionStorage", HEALED, "1");
      location.reload();
    } else {
      show("Emberloam could not start. Load the page again. What you typed before is still kept on this device.");
      offer("", { "Load the page again": () => location.reload() });
    }
    return false;
  }
}

/** Has the copy on the device put right; how many files that were. */
async function heal() {
  const worker = navigator.serviceWorker?.controller;
  if (!worker) return 0;
  const { port1, port2 } = new MessageChannel();
  return new Promise((done) => {
    port1.onmessage = ({ data }) => done(data);
    setTimeout(done, 20_000, 0);
    worker.postMessage("heal", [port2]);
  });
}

async function keepOfflineCopy(started) {
  const workers = navigator.serviceWorker;
  // Missing when the page is not on https or localhost, and in some private windows. A page that
  // was opened as a file is its own copy.
  if (!workers || location.protocol === "file:") return;

  // Another copy of the program, above this one, may look after the page until ours is here.
  const isOurs = () => workers.controller?.scriptURL === new URL(OFFLINE, location).href;
  let controlled = isOurs();
  let asked = false;
  let changed = false;
  workers.addEventListener("controllerchange", () => {
    if (asked) return location.reload();
    if (!isOurs()) return;
    // Another tab has taken the newer version; this one keeps its text and goes on until it is asked.
    if (controlled) {
      changed = true;
      tell("update-waiting");
    } else tell("offline-ready");
    controlled = true;
  });

  const registration = await workers.register(OFFLINE, { updateViaCache: "none" });

  const useUpdate = () => {
    if (changed) return location.reload();
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

  if (registration.waiting && isOurs()) offer();
  registration.addEventListener("updatefound", () => {
    const incoming = registration.installing;
    incoming.addEventListener("statechange", () => {
      if (incoming.state === "installed" && isOurs()) offer();
    });
  });
}

if (self !== top) {
  // A page around this one could lead a hand to press what it does not see.
  document.getElementById("page").remove();
  show("Emberloam works only in a window of its own.");
  const link = document.createElement("a");
  Object.assign(link, { href: location.pathname, target: "_blank", textContent: "Open Emberloam" });
  trouble.append(" ", link);
} else {
  putAside(unfold(recall("sessionStorage", STOPPED)));
  addEventListener("pagehide", () => atWork(false));
  // What is kept comes back in a moment; an empty box is no place to type meanwhile.
  if (latest() !== null) {
    ground.classList.add("has-report", "restored");
    atWork(true);
  } else atWork(false);
  box.addEventListener("input", () => {
    if (box.value.length < 20_000) return;
    atWork(true);
    untilRead();
  }, { capture: true });
  const started = await startPage();
  if (started) {
    remember("sessionStorage", HEALED, null);
    tell("started");
  }
  if (!over) {
    setTimeout(atWork, 0, false);
    offerAgain(unfold(recall("sessionStorage", STOPPED)));
  }
  try {
    await keepOfflineCopy(started);
  } catch (reason) {
    // The page works without its offline copy; there is nothing the person must do.
    console.warn("No offline copy could be stored:", reason);
  }
}
