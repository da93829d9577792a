// Folds that open by themselves.

// The report, when the screen is turned and there is room for it beside the answer.
matchMedia("(min-width: 60rem) and (orientation: landscape)").addEventListener("change", (turned) => {
  if (turned.matches) document.getElementById("report-fold").open = true;
});

// What belongs on paper, while it is printed.
let opened = [];

addEventListener("beforeprint", () => {
  opened = [...document.querySelectorAll(".open-on-paper:not([open])")];
  for (const fold of opened) fold.open = true;
});

addEventListener("afterprint", () => {
  for (const fold of opened) fold.open = false;
});
