// Keyboard, foot pedal and presenter: Space, Enter, PageDown are the main act; letters are the others.
const MAIN = new Set([" ", "Enter", "PageDown"]);
const typing = (element) => element?.matches?.("input, textarea, select, dialog *, [contenteditable]");
const ownKey = (element, key) => key !== "PageDown" && element?.matches?.("a, button:not(#main-act), summary");

export function listenToKeys({ main, other }) {
  addEventListener("keydown", (event) => {
    if (event.repeat || event.altKey || event.ctrlKey || event.metaKey) return;
    if (document.querySelector("dialog[open]") || typing(event.target)) return;
    if (MAIN.has(event.key)) {
      if (ownKey(event.target, event.key)) return;
      event.preventDefault();
      main();
    } else if (other(event.key.toLowerCase())) event.preventDefault();
  });
  // A button's own click by Space comes on keyup and would press twice.
  addEventListener("keyup", (event) => {
    if (event.key === " " && event.target?.id === "main-act") event.preventDefault();
  });
}
