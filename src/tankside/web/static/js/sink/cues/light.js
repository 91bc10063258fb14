// Light: a thick frame, or ink once a second, for three seconds; the styles choose by theme and by reduced motion.
import { tick } from "../tick.js";

const FOR_MS = 3000;
let stop = null;

export function showLight() {
  stop?.();
  document.body.dataset.cue = "true";
  stop = tick.after(FOR_MS, () => delete document.body.dataset.cue);
}
