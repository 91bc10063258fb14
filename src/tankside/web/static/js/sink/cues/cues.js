// Calls each cue once, in every way that is switched on. What was missed while away is shown, never replayed.
import { tick } from "../tick.js";
import { showText } from "./text.js";
import { showLight } from "./light.js";
import { soundAt } from "./tone.js";
import { speak } from "./voice.js";

const AHEAD_MS = 1000;
const LATE_MS = 3000;
const KEY = "tankside-cues";

export const ways = { tone: true, voice: false, light: true, ...JSON.parse(localStorage.getItem(KEY) ?? "{}") };

export function switchWay(name) {
  ways[name] = !ways[name];
  localStorage.setItem(KEY, JSON.stringify(ways));
  return ways[name];
}

export class Cues {
  constructor(clock) {
    this.clock = clock;
    this.sounded = new Set();
    this.called = new Set();
  }

  // Tones are handed over a second ahead; the rest happens at the cue.
  step(script) {
    for (const act of script.screen.acts) {
      const due = act.cue ? script.due(act) : undefined;
      if (due === undefined || !this.wanted(script, act)) continue;
      const ms = this.clock.until_ms(due), key = `${act.id}@${Math.round(due / 1e6)}`;
      if (ms <= AHEAD_MS && ms > -LATE_MS && !this.sounded.has(key)) this.sound(act, key, ms);
      if (ms <= 0 && !this.called.has(key)) this.call(act, key, ms > -LATE_MS);
    }
  }

  wanted(script, act) {
    return act.sets ? script.anchor(act.sets) === undefined : script.lives(act, act.tankful);
  }

  sound(act, key, ms) {
    this.sounded.add(key);
    if (ways.tone && !ways.voice) soundAt(ms);
  }

  call(act, key, fresh) {
    this.called.add(key);
    if (!fresh) return;
    showText(act.spoken);
    if (ways.light) showLight();
    if (ways.voice) speak(act.spoken, act.lang, () => soundAt(0));
    document.dispatchEvent(new CustomEvent("cue", { detail: { id: act.id, ms: tick.now() } }));
  }
}
