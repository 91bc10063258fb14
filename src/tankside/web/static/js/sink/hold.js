// Leaving and the like: what a touch may not do.
import { tick } from "./tick.js";

const HOLD_MS = 1000;
const AGAIN_MS = 600;

// A button that acts only after a second's hold, or after two presses by key.
export function onHold(button, act) {
  let stop = null, first = -Infinity;
  const empty = () => {
    stop?.();
    stop = null;
    delete button.dataset.holding;
  };
  button.addEventListener("pointerdown", () => {
    button.dataset.holding = "true";
    stop = tick.after(HOLD_MS, () => (empty(), act()));
  });
  for (const name of ["pointerup", "pointercancel", "pointerleave"]) button.addEventListener(name, empty);
  button.addEventListener("click", (event) => {
    if (event.detail !== 0) return;
    if (tick.now() - first >= AGAIN_MS && first > -Infinity) act();
    else first = tick.now();
  });
}
