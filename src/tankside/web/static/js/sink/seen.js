// When this device last looked at the run while in touch, kept over a reload; after an outage it asks what it missed.
import { tick } from "./tick.js";

const KEEP_MS = 2000;

export class Seen {
  constructor(run) {
    this.key = `tankside-seen-${run}`;
    this.us = Number(localStorage.getItem(this.key)) || undefined;
    this.since = this.us;
  }

  // Called at each look: only what is in touch and can be seen counts as looked at.
  look(us, inTouch) {
    if (!inTouch || this.since !== undefined || document.visibilityState !== "visible") return;
    this.us = us;
    if (tick.now() - (this.kept_ms ?? -Infinity) < KEEP_MS) return;
    this.kept_ms = tick.now();
    localStorage.setItem(this.key, String(Math.round(us)));
  }

  // On waking, or in touch again: what happened since is to be asked.
  wake() {
    this.since ??= this.us;
  }

  told() {
    this.since = undefined;
  }
}
