// How the page looks: the report beside the answer, and high contrast for bright sun.

// The report opens when the screen is turned and there is room for it beside the answer.
matchMedia("(min-width: 60rem) and (orientation: landscape)").addEventListener("change", (turned) => {
  if (turned.matches) document.getElementById("report-fold").open = true;
});

const LOOK = "emberloam:look";

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
