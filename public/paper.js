// Before printing, opens the folds that belong on paper; after it, closes them.

let opened = [];

addEventListener("beforeprint", () => {
  opened = [...document.querySelectorAll(".open-on-paper:not([open])")];
  for (const fold of opened) fold.open = true;
});

addEventListener("afterprint", () => {
  for (const fold of opened) fold.open = false;
});
