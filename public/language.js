// Puts the page into the reader's language. The program writes English; each text is looked up in
// the catalogue of the language as soon as it stands in the page, before it is painted.
//
// A language is a file words/<tag>.po and a line here; nothing else knows of it.
//
// To the page, on window:
//   emberloamWords     the catalogue and the country's decimal mark, as long as it isn't English
//   emberloamLanguage  a promise: the language is chosen and its catalogue is here
// From the page, on window:
//   emberloamLearn()   reads emberloamWords anew; gives the reason when it can't
//   emberloamSay(text) the text in the language
//   emberloam:speaks   the event that these two are there
{
  const LANGUAGES = { en: "English", es: "Español" };
  const OWN = "en";
  const KEPT = "emberloam:language";
  // What a reader meets of an element beside its text.
  const SPOKEN = ["aria-label", "title", "placeholder", "alt"];
  const UNTOUCHED = "textarea, script, style, [translate=no]";
  const MOST_KNOWN = 4000;

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

  async function fetchWords(tag) {
    if (tag === OWN) {
      window.emberloamWords = undefined;
    } else {
      const answer = await fetch(`words/${tag}.po`);
      if (!answer.ok) throw new Error(`words/${tag}.po: ${answer.status}`);
      window.emberloamWords = { po: await answer.text(), mark: mark(tag) };
    }
    speaking = tag;
    document.documentElement.lang = tag;
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
      known.set(english, said);
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

  const touched = (element) => element && !element.closest(UNTOUCHED);

  const watcher = new MutationObserver((changes) => {
    for (const { type, target, addedNodes, attributeName } of changes) {
      const element = target.nodeType === Node.ELEMENT_NODE ? target : target.parentElement;
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
        attributeFilter: SPOKEN,
      });
    // Charts are painted again with the new words.
    dispatchEvent(new Event("resize"));
  }

  // A page that can't get its language works in English, and says why to who looks.
  const failed = (reason) => {
    console.warn("The words of this language could not be had:", reason);
    window.emberloamWords = undefined;
    speaking = OWN;
    document.documentElement.lang = OWN;
  };

  window.emberloamLanguage = fetchWords(wanted()).catch(failed);

  addEventListener("emberloam:speaks", () => {
    if (speaking === OWN) return;
    try {
      speak();
    } catch (reason) {
      failed(reason);
    }
  });

  addEventListener("emberloam:started", () => {
    const choice = document.getElementById("language");
    for (const [tag, name] of Object.entries(LANGUAGES)) {
      const option = new Option(name, tag);
      option.lang = tag;
      option.translate = false;
      choice.append(option);
    }
    choice.value = speaking;
    choice.addEventListener("change", async () => {
      try {
        await fetchWords(choice.value);
        speak();
        localStorage.setItem(KEPT, speaking);
      } catch (reason) {
        // Not kept, or not had: the choice shows what holds.
        console.warn("The language was not changed or not kept:", reason);
        choice.value = speaking;
      }
    });
  });
}
