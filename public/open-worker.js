// Opens one file, then is thrown away by `files.js`: whatever a file breaks, it breaks only this.

import start, { open_file } from "./opener.js";

self.onmessage = async ({ data: bytes }) => {
  try {
    await start();
  } catch {
    return postMessage({ notLoaded: true });
  }
  postMessage("started");
  try {
    const { kind, saved, sheets, text, notes } = open_file(new Uint8Array(bytes));
    postMessage({ kind, saved, sheets, text, notes });
  } catch (why) {
    // A refusal comes as its words; anything else is a fault.
    postMessage({ refused: typeof why === "string" ? why : "" });
  }
};
