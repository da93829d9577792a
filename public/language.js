// Puts the page into the reader's language. The program writes English; each text is looked up in
// the catalogue of the language as soon as it stands in the page, before it is painted.
//
// A language is a file words/<tag>.po and a line here; nothing else knows of it.
//
// To the page, on window:
//   emberloamName(what) what this copy of the program calls what it keeps, as `app/src/store.rs`
//   emberloamWords     the catalogue and the country's decimal mark, as long as it isn't English
//   emberloamLanguage  a promise: the language is chosen and its catalogue is here
// From the page, on window:
//   emberloamLearn()   reads emberloamWords anew; gives the reason when it can't
//   emberloamSay(text) the text in the language
//   emberloam:speaks   the event that these two are there
{
  const LANGUAGES = { en: "English", es: "Español" };
  const OWN = "en";
  const folder = location.pathname.replace(/[^/]*$/, "");
  window.emberloamName = (what) => `emberloam${folder === "/" ? "" : folder}:${what}`;
  const KEPT = emberloamName("language");
  // What a reader meets of an element beside its text.
  const SPOKEN = ["aria-label", "title", "placeholder", "alt"];
  const UNTOUCHED = "textarea, script, style, [translate=no]";
  const MOST_KNOWN = 4000;
  // How long the page waits for its words, ms.
  const PATIENCE = 8000;

  const countries = navigator.languages ?? [navigator.language];
  const base = (tag) => tag.split("-")[0].toLowerCase();

  function wanted() {
    try {
      const kept = localStorage.getItem(KEPT);
      if (kept in LANGUAGES) return kept;
    } catch {
      // A browser that keeps nothing starts with its own language.
    }
    return countries.map(base).find((tag) => tag in LANGUAGES) ?? OWN;
  }

  /** The mark between whole numbers and decimals, as the reader's country writes it. */
  function mark(tag) {
    const country = countries.find((country) => base(country) === tag) ?? tag;
    return (1.5).toLocaleString(country).includes(",") ? "," : ".";
  }

  let speaking = OWN;

  /** The catalogue of a language; none for the program's own. */
  async function words(tag) {
    if (tag === OWN) return undefined;
    const path = `words/${tag}.po`;
    const answer = await fetch(path, { signal: AbortSignal.timeout(PATIENCE) });
    if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
    // The copy on the device holds the languages that were chosen.
    navigator.serviceWorker?.ready.then(({ active }) => active?.postMessage({ keep: path }));
    return { po: await answer.text(), mark: mark(tag) };
  }

  function turnTo(tag, catalogue) {
    window.emberloamWords = catalogue;
    speaking = tag;
    document.documentElement.lang = tag;
    const choice = document.getElementById("language");
    if (choice) choice.value = tag;
  }

  // English beside what stands in its place, for each text and attribute that was changed.
  const texts = new WeakMap();
  const attributes = new WeakMap();
  const known = new Map();

  function say(english) {
    let said = known.get(english);
    if (said === undefined) {
      said = window.emberloamSay(english);
      if (known.size > MOST_KNOWN) known.clear();
      // A longer one is a person's own, and stays as it is.
      if (english.length < 2000) known.set(english, said);
    }
    return said;
  }

  /** What now stands for a text: `now` is what the page wrote, or what we wrote before. */
  function put(kept, now, write) {
    const english = kept && kept.said === now ? kept.english : now;
    if (!/\p{L}|\d\.\d/u.test(english)) return kept;
    const said = speaking === OWN ? english : say(english);
    if (said !== now) write(said);
    return { english, said };
  }

  function putText(node) {
    const kept = put(texts.get(node), node.data, (said) => (node.data = said));
    if (kept) texts.set(node, kept);
  }

  function putAttribute(element, name) {
    const now = element.getAttribute(name);
    if (!now) return;
    const all = attributes.get(element) ?? {};
    all[name] = put(all[name], now, (said) => element.setAttribute(name, said));
    attributes.set(element, all);
  }

  function walk(node) {
    if (node.nodeType === Node.TEXT_NODE) {
      putText(node);
    } else if (node.nodeType === Node.ELEMENT_NODE && !node.matches(UNTOUCHED)) {
      for (const name of SPOKEN) if (node.hasAttribute(name)) putAttribute(node, name);
      for (const child of node.childNodes) walk(child);
    }
  }

  /** The English of a text that turned out to be a person's own. */
  function restore(node) {
    const kept = texts.get(node);
    if (kept && node.data === kept.said) node.data = kept.english;
  }

  const touched = (element) => element && !element.closest(UNTOUCHED);

  const watcher = new MutationObserver((changes) => {
    for (const { type, target, addedNodes, attributeName } of changes) {
      const element = target.nodeType === Node.ELEMENT_NODE ? target : target.parentElement;
      if (attributeName === "translate") {
        if (touched(element)) walk(element);
        else for (const child of element.childNodes) restore(child);
        continue;
      }
      if (!touched(element)) continue;
      if (type === "characterData") putText(target);
      else if (type === "attributes") putAttribute(target, attributeName);
      else addedNodes.forEach(walk);
    }
  });

  /** Says the whole page, and from now on all that comes. */
  function speak() {
    const trouble = window.emberloamLearn();
    if (trouble) throw new Error(trouble);
    known.clear();
    walk(document.documentElement);
    if (speaking === OWN) watcher.disconnect();
    else
      watcher.observe(document.documentElement, {
        subtree: true,
        childList: true,
        characterData: true,
        attributeFilter: [...SPOKEN, "translate"],
      });
    // Charts are painted again with the new words.
    dispatchEvent(new Event("resize"));
  }

  /** Says the frame of index.html, before the program can: its texts stand in the catalogue. */
  function sayFrame({ po }) {
    const walk = document.createTreeWalker(document.getElementById("ground"), NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
      const node = walk.currentNode;
      const english = node.data;
      const [, entry] = po.split(`msgid ${JSON.stringify(english)}\nmsgstr `);
      if (!entry) continue;
      const said = (node.data = JSON.parse(entry.split("\n", 1)[0]));
      texts.set(node, { english, said });
    }
  }

  // A page that can't get its language works in English, and says why to who looks.
  function failed(reason) {
    console.warn("The words of this language could not be had:", reason);
    turnTo(OWN);
  }

  const first = wanted();
  window.emberloamLanguage = words(first)
    .then((catalogue) => {
      turnTo(first, catalogue);
      if (catalogue) sayFrame(catalogue);
    })
    .catch(failed);

  addEventListener("emberloam:speaks", () => {
    if (speaking === OWN) return;
    try {
      speak();
    } catch (reason) {
      failed(reason);
    }
  });

  let newest = 0;

  /** Turns the page to another language; of two choices in a row the last one holds. */
  async function choose(tag) {
    const mine = ++newest;
    try {
      localStorage.setItem(KEPT, tag);
    } catch {
      // It holds until the page is closed.
    }
    try {
      const catalogue = await words(tag);
      if (mine !== newest) return;
      turnTo(tag, catalogue);
      // Before the page can speak, `emberloam:speaks` does it.
      if (window.emberloamLearn) speak();
    } catch (reason) {
      if (mine !== newest) return;
      failed(reason);
      if (window.emberloamLearn) speak();
    }
  }

  /** Puts the languages into a box to choose from. */
  function offer(choice) {
    for (const [tag, name] of Object.entries(LANGUAGES)) {
      const option = new Option(name, tag);
      option.lang = tag;
      option.translate = false;
      choice.append(option);
    }
    choice.value = speaking;
  }

  addEventListener("emberloam:started", () => {
    const choice = document.getElementById("language");
    offer(choice);
    choice.addEventListener("change", () => choose(choice.value));
  });
}
