// Brings files into the page and out of it: chosen, dropped, pasted, shared by or opened from the
// system. Their text goes into the paste box, as if it had been pasted.
//
// To the page, as events on window:
//   emberloam:opened   what was opened, in lines: where from, then notes
//   emberloam:saved    a report saved here was opened: its JSON
//   emberloam:replacing  what now comes into the box stands for the whole report
//   emberloam:refused  why a file can't be opened
//   emberloam:trial-file  "text" or "refused", then the text of a trial or the reason
// From the page:
//   emberloam:save     a name, a type and a text, each on a line of its own, to save as a file
//   emberloam:started  by boot.js, when the page stands

const MOST_BYTES = 20_000_000;
// As `service-worker.js` names it.
const SHARED = emberloamName("").replace(/^(.*):$/, "shared-with-$1");

const byId = (id) => document.getElementById(id);
const tell = (name, detail) =>
  window.dispatchEvent(new CustomEvent(`emberloam:${name}`, { detail }));

const BROKEN =
  "This file could not be read: something in it stopped the reading. Other files still open. Copy the table out of it and paste it.";
const NOT_LOADED =
  "What opens files could not be loaded. Go online and load the page again, or copy the table out of it and paste it.";
const TOO_LONG =
  "Reading this file took more than a minute, so it was stopped. Copy the table out of it and paste it.";
// A file that never comes to an end, or whose end the browser doesn't tell.
const LONGEST = 60_000;
const EMPTY = "It is empty. Nothing here was changed.";
const GONE = "This file could not be read. Choose it again; a folder can't be opened.";

let cancel = () => {};

/** Shows what is being opened, and the way to stop it. */
function opening(name) {
  // A phone with an answer has the report folded away, and Cancel with it.
  if (name) byId("report-fold").open = true;
  byId("opening").textContent = name && `Opening ${name}…`;
  byId("cancel-opening").hidden = !name;
}

/** The text of a file that is plainly UTF-8; nothing when the opener must look at it. */
function plain(bytes) {
  if (bytes.subarray(0, 4000).includes(0)) return;
  let text;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return;
  }
  const other = /^\s*[<{[]|%PDF-|^PK\x03|<table|[\x01-\x08\x0e-\x1f]/i.test(text);
  return other ? undefined : { kind: "a text file", text, notes: [] };
}

/** One file by the opener, in a worker of its own. */
async function byOpener(bytes) {
  const worker = new Worker("open-worker.js", { type: "module" });
  return new Promise((resolve) => {
    const end = (answer) => {
      clearTimeout(late);
      worker.terminate();
      resolve(answer);
    };
    const late = setTimeout(() => end({ refused: TOO_LONG }), LONGEST);
    cancel = () => end({ cancelled: true });
    let started = false;
    worker.onmessage = ({ data }) => (data === "started" ? (started = true) : end(data));
    worker.onerror = () => end({ refused: started ? BROKEN : NOT_LOADED });
    worker.postMessage(bytes.buffer, [bytes.buffer]);
  });
}

async function read(file) {
  if (file.size > MOST_BYTES) {
    return { refused: "It is larger than 20 MB. Cut it into parts, or copy the table out of it and paste it." };
  }
  const stopped = new Promise((resolve) => (cancel = () => resolve({ cancelled: true })));
  // Fails for a folder, and for a file that was moved since.
  const bytes = await Promise.race([stopped, file.arrayBuffer().catch(() => ({ refused: GONE }))]);
  if (!(bytes instanceof ArrayBuffer)) return bytes;
  const answer = plain(new Uint8Array(bytes)) ?? (await byOpener(new Uint8Array(bytes)));
  if (answer.notLoaded) answer.refused = NOT_LOADED;
  if (answer.refused === "") answer.refused = BROKEN;
  return answer;
}

function put(text, from, to) {
  const box = byId("report-text");
  box.setRangeText(text, from ?? 0, to ?? box.value.length, "end");
  box.dispatchEvent(new InputEvent("input", { bubbles: true }));
  box.dispatchEvent(new ClipboardEvent("paste", { bubbles: true }));
}

/** How many times files were opened. */
let turns = 0;

/** Opens files; several become the sheets of one report. */
async function open(files) {
  const turn = ++turns;
  cancel();
  const parts = [];
  const lines = [];
  for (const file of files) {
    const name = file.name ? `“${file.name}”` : "what was pasted";
    opening(name);
    const answer = await read(file);
    // Another file was chosen in between: the page speaks of that one now.
    if (turn !== turns) return;
    opening("");
    if (answer.cancelled) return byId("report-file").focus();
    if (answer.refused) return tell("refused", `${name}: ${answer.refused}`);
    if (answer.saved) return tell("saved", answer.text);
    if (!answer.text.trim()) return tell("refused", `${name}: ${EMPTY}`);
    const mark = files.length > 1 && !answer.sheets ? `[sheet ${file.name.replaceAll("]", ")")}]\n` : "";
    parts.push(mark + answer.text);
    lines.push(`Opened from ${name}, ${answer.kind}.`, ...answer.notes);
  }
  if (!parts.length) return;
  tell("replacing");
  put(parts.join("\n"));
  tell("opened", lines.join("\n"));
}

document.addEventListener("change", ({ target }) => {
  if (target.id !== "report-file" || !target.files[0]) return;
  const files = [...target.files];
  // So that the same file can be opened again after it was changed.
  target.value = "";
  open(files);
});

// A table of plots, or a trial that was saved.
document.addEventListener("change", async ({ target }) => {
  const file = target.id === "trial-file" && target.files[0];
  if (!file) return;
  target.value = "";
  const answer = /\.json$/i.test(file.name) ? { text: await file.text() } : await read(file);
  if (answer.cancelled) return;
  tell("trial-file", answer.refused ? `refused\n${answer.refused}` : `text\n${answer.text}`);
});

document.addEventListener("click", ({ target }) => {
  if (target.id === "cancel-opening") cancel();
});

// Dropped anywhere.
const holdsFiles = (event) => event.dataTransfer?.types.includes("Files");
const mark = (on) => document.documentElement.classList.toggle("dropping", on);

addEventListener("dragover", (event) => {
  if (!holdsFiles(event)) return;
  event.preventDefault();
  mark(true);
});
addEventListener("dragleave", (event) => {
  if (!event.relatedTarget) mark(false);
});
addEventListener("drop", (event) => {
  mark(false);
  if (!holdsFiles(event)) return;
  event.preventDefault();
  open([...event.dataTransfer.files]);
});

// Pasted: a file, or a table whose merged cells the plain text would lose.
addEventListener("paste", async (event) => {
  const data = event.clipboardData;
  const box = byId("report-text");
  const elsewhere = event.target !== box && event.target.matches?.("input, select, textarea");
  if (!data || !box || elsewhere) return;
  const text = data.getData("text/plain");
  const html = data.getData("text/html");
  if (/<table/i.test(html) && (!text.includes("\t") || /(row|col)span/i.test(html))) {
    event.preventDefault();
    const [from, to] = [box.selectionStart, box.selectionEnd];
    const answer = await read(new Blob([html]));
    put(answer.text ?? text, from, to);
  } else if (!text && data.files.length) {
    event.preventDefault();
    open([...data.files]);
  } else if (text && event.target !== box) {
    event.preventDefault();
    tell("replacing");
    put(text);
  }
});

// Opened with or shared to this page by the system.
addEventListener("emberloam:started", async () => {
  window.launchQueue?.setConsumer(async ({ files }) => {
    if (files?.length) open(await Promise.all(files.map((file) => file.getFile())));
  });
  if (!location.search.includes("shared")) return;
  history.replaceState(null, "", location.pathname);
  const cache = await caches.open(SHARED);
  const files = [];
  for (const request of await cache.keys()) {
    const answer = await cache.match(request);
    files.push(new File([await answer.blob()], decodeURIComponent(answer.headers.get("x-name"))));
  }
  await caches.delete(SHARED);
  open(files);
});

// A picture comes as the drawing it is to be painted from.
async function painted(svg) {
  const picture = new Image();
  picture.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
  await picture.decode();
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [picture.width, picture.height];
  canvas.getContext("2d").drawImage(picture, 0, 0);
  return new Promise((done) => canvas.toBlob(done, "image/png"));
}

addEventListener("emberloam:save", async ({ detail }) => {
  const [, name, type, text] = /^(.*)\n(.*)\n([^]*)$/.exec(detail);
  const link = document.createElement("a");
  const content = type === "image/png" ? await painted(text) : new Blob([text], { type });
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
});
