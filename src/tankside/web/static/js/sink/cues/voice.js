// The browser's own voice; if it has not begun after half a second, the tones speak instead.
import { tick } from "../tick.js";

const BEGIN_MS = 500;

export function speak(words, lang, instead) {
  const voices = globalThis.speechSynthesis?.getVoices() ?? [];
  if (!voices.length) return instead();
  const said = new SpeechSynthesisUtterance(words);
  said.lang = lang;
  said.voice = voices.find((one) => one.localService && one.lang.startsWith(lang)) ?? null;
  const stop = tick.after(BEGIN_MS, instead);
  said.onstart = stop;
  speechSynthesis.cancel();
  speechSynthesis.speak(said);
  return undefined;
}
