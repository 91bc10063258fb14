// Pressing: on pointer-up, never in the first 400 ms of a new main act, held where it is early.
import { tick } from "./tick.js";

const DEAF_MS = 400;
const HOLD_MS = 1000;
const AGAIN_MS = 600;

export class MainAct {
  // `press(id, held)` notes the act; `now()` answers the act that the page offers and whether it must be held.
  constructor(button, { now, press, say }) {
    Object.assign(this, { button, now, press, say });
    this.changed_ms = -Infinity;
    this.begun = null;
    this.first = null;
    button.addEventListener("pointerdown", (event) => event.button === 0 && this.down(event));
    for (const name of ["pointerup", "pointercancel", "pointerleave"]) button.addEventListener(name, () => this.up(name === "pointerup"));
    // Presses of assistive technology arrive as a click without a pointer.
    button.addEventListener("click", (event) => event.detail === 0 && this.key());
  }

  // The page calls this at every step, so that a change of act is seen when it happens.
  offers(id) {
    if (id === this.id) return;
    if (this.id !== undefined) this.changed_ms = tick.now();
    this.id = id;
    this.first = null;
  }

  deaf() {
    return tick.now() - this.changed_ms < DEAF_MS;
  }

  down() {
    if (this.deaf() || this.id === undefined) return;
    const { early } = this.now();
    this.begun = { id: this.id, early, ms: tick.now() };
    if (early) this.fill();
  }

  fill() {
    this.button.dataset.holding = "true";
    this.stop = tick.after(HOLD_MS, () => {
      const { id } = this.begun ?? {};
      this.empty();
      if (id) this.press(id, true);
    });
  }

  // A press begun before a change counts for the act that it began on.
  up(inside) {
    const begun = this.begun;
    if (begun?.early && inside) this.say("hold");
    this.empty();
    if (begun && !begun.early && inside) this.press(begun.id, false);
  }

  empty() {
    this.stop?.();
    this.begun = null;
    delete this.button.dataset.holding;
  }

  // By key or pedal an early act is pressed twice, with a pause between.
  key() {
    if (this.deaf() || this.id === undefined) return;
    if (!this.now().early) return this.press(this.id, false);
    const ms = tick.now();
    if (this.first?.id === this.id && ms - this.first.ms >= AGAIN_MS) return this.press(this.id, true);
    if (this.first?.id !== this.id) {
      this.first = { id: this.id, ms };
      this.say("press-again");
    }
    return undefined;
  }
}
