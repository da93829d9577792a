// Puts the text of a chosen file into the paste box, as if it had been pasted.

// Little more than the page reads: enough for it to say that a file is too large.
const MOST_BYTES = 1_000_001;

/** UTF-16 and UTF-8 as they say; anything else as older spreadsheets write it. */
function textOf(bytes) {
  const mark = bytes[0] * 256 + bytes[1];
  const name = { 0xfffe: "utf-16le", 0xfeff: "utf-16be" }[mark] ?? "utf-8";
  try {
    return new TextDecoder(name, { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

document.addEventListener("change", async ({ target }) => {
  if (target.id !== "report-file" || !target.files[0]) return;
  const box = document.getElementById("report-text");
  const bytes = await target.files[0].slice(0, MOST_BYTES).arrayBuffer();
  // So that the same file can be opened again after it was changed.
  target.value = "";
  box.value = textOf(new Uint8Array(bytes));
  box.dispatchEvent(new InputEvent("input", { bubbles: true }));
  box.dispatchEvent(new ClipboardEvent("paste", { bubbles: true }));
});
