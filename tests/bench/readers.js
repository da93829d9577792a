// Measures one reader on one file, on the main thread, in this page alone:
// `measure(reader, file, runs)` gives the middle time, the time of the first run
// with what it fetches, and the memory that the first run took.

const bytesOf = async (path) => new Uint8Array(await (await fetch(path)).arrayBuffer());

const READERS = {
  // Each gives a function from bytes to the number of characters or cells it found,
  // and one that tells how much memory its module holds.
  async opener() {
    const module = await import("./libs/opener.js");
    const wasm = await module.default();
    return [(bytes) => module.open_file(bytes).text.length, () => wasm.memory.buffer.byteLength];
  },
  async "cells alone"() {
    const module = await import("./libs/reader.js");
    const wasm = await module.default();
    return [(bytes) => module.cells(bytes), () => wasm.memory.buffer.byteLength];
  },
  async "soil report"() {
    const module = await import("./libs/reader.js");
    const wasm = await module.default();
    return [(bytes) => module.results(bytes), () => wasm.memory.buffer.byteLength];
  },
  async "pdfjs-dist"() {
    const pdf = await import("./libs/pdf.min.js");
    // On this thread, so that both are measured alike.
    globalThis.pdfjsWorker = await import("./libs/pdf.worker.min.js");
    const read = async (bytes) => {
      const task = pdf.getDocument({ data: bytes.slice(), verbosity: 0 });
      const file = await task.promise;
      let length = 0;
      for (let at = 1; at <= file.numPages; at++) {
        const { items } = await (await file.getPage(at)).getTextContent();
        for (const item of items) length += (item.str ?? "").length;
      }
      await task.destroy();
      return length;
    };
    return [read, () => 0];
  },
  async xlsx() {
    const read = (bytes) => {
      const book = XLSX.read(bytes, { type: "array" });
      return book.SheetNames.reduce((n, name) => n + XLSX.utils.sheet_to_csv(book.Sheets[name]).length, 0);
    };
    return [read, () => 0];
  },
  async papaparse() {
    const read = (bytes) => Papa.parse(new TextDecoder().decode(bytes)).data.reduce((n, row) => n + row.length, 0);
    return [read, () => 0];
  },
};

const heap = () => performance.memory.usedJSHeapSize;

window.measure = async (reader, path, runs) => {
  const bytes = await bytesOf(path);
  globalThis.gc?.();
  const before = heap();
  const begun = performance.now();
  const [read, module] = await READERS[reader]();
  const found = await read(bytes);
  const first = performance.now() - begun;
  const memory = Math.max(0, heap() - before) + module();
  const times = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    await read(bytes);
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return { found, first, memory, middle: times[times.length >> 1], least: times[0], most: times.at(-1) };
};
window.ready = true;
