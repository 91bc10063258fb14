// Two tones by Web Audio. The audio clock drifts, so each cue is set by its distance from now, never up front.
let context = null;
const HIGH_HZ = 880, LOW_HZ = 660;

// Sound may begin only after a touch; every touch tries again, for a phone that was locked has stopped it.
export function wakeSound() {
  const Audio = globalThis.AudioContext ?? globalThis.webkitAudioContext;
  if (!Audio) return false;
  if (!context || context.state === "closed") context = new Audio();
  if (context.state !== "running") context.resume().catch(() => {});
  return true;
}

function beep(hz, from, s) {
  const tone = context.createOscillator(), level = context.createGain();
  tone.frequency.value = hz;
  level.gain.setValueAtTime(0, from);
  level.gain.linearRampToValueAtTime(0.5, from + 0.02);
  level.gain.setValueAtTime(0.5, from + s - 0.04);
  level.gain.linearRampToValueAtTime(0, from + s);
  tone.connect(level).connect(context.destination);
  tone.start(from);
  tone.stop(from + s);
}

// The pattern `ms` from now; says whether anything will sound.
export function soundAt(ms) {
  document.dispatchEvent(new CustomEvent("tone", { detail: { ms } }));
  if (context?.state !== "running") return false;
  const from = context.currentTime + Math.max(0, ms) / 1000;
  beep(HIGH_HZ, from, 0.25);
  beep(LOW_HZ, from + 0.3, 0.35);
  return true;
}
