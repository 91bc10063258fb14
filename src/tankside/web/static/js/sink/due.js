// When the main act is due, and for how long it must still be held.
import { fill, span } from "./words.js";

const S = 1e6;

// 'due in 6:42', 'due now', 'due 0:09 ago'; nothing where no time is known yet.
export function dueWords({ due, us, phrases }) {
  if (due === undefined) return "";
  const s = (due - us) / S;
  if (Math.abs(s) < 1) return phrases["due-now"];
  return s > 0 ? fill(phrases["due-in"], { t: span(s) }) : fill(phrases["due-ago"], { t: span(-s) });
}

// Seconds until a touch suffices; 0 where it does already.
export function heldFor(script, main, us) {
  if (!main || main.held_before_s === null) return 0;
  const from = script.anchor(main.anchor);
  return from === undefined ? 0 : Math.max(0, main.held_before_s - (us - from) / S);
}
