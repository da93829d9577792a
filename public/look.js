// How the page looks: the report beside the answer, and high contrast for bright sun.

// The report opens when the screen is turned and there is room for it beside the answer; where
// there is none the answer comes first.
matchMedia("(min-width: 60rem) and (orientation: landscape)").addEventListener("change", (turned) => {
  const answered = document.getElementById("ground").classList.contains("has-report");
  document.getElementById("report-fold").open = turned.matches || !answered;
});

// A recipe that is touched keeps the screen awake for a while: the hands are wet by then.
const AWAKE = 20 * 60_000;
let until = 0;
let lock;

async function stayAwake() {
  if (lock || document.hidden || Date.now() >= until) return;
  try {
    lock = await navigator.wakeLock.request("screen");
    lock.addEventListener("release", () => (lock = undefined));
  } catch {
    // The device saves its battery, or can't.
  }
}

for (const touched of ["pointerdown", "input"]) {
  addEventListener(touched, ({ target }) => {
    if (!target.closest?.(".recipe")) return;
    until = Date.now() + AWAKE;
    setTimeout(() => Date.now() >= until && lock?.release(), AWAKE);
    stayAwake();
  });
}
document.addEventListener("visibilitychange", stayAwake);

const LOOK = emberloamName("look");

function look(sun) {
  if (sun) document.documentElement.dataset.look = "sun";
  else delete document.documentElement.dataset.look;
}

function kept() {
  try {
    return localStorage.getItem(LOOK) === "sun";
  } catch {
    // A browser that keeps nothing starts with the device's own look.
    return false;
  }
}

look(kept());

addEventListener("emberloam:started", () => {
  document.getElementById("sun").checked = kept();
});

document.addEventListener("change", ({ target }) => {
  if (target.id !== "sun") return;
  look(target.checked);
  try {
    if (target.checked) localStorage.setItem(LOOK, "sun");
    else localStorage.removeItem(LOOK);
  } catch {
    // It holds until the page is closed.
  }
  // Charts are painted again in the new colours.
  dispatchEvent(new Event("resize"));
});
