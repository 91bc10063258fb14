// For who notes each inversion: while it is fresh and nothing is late, it is the main act.
const S = 1e6;
const KEY = "tankside-note-each";

export const notesEach = () => localStorage.getItem(KEY) === "yes";

export function switchEach() {
  localStorage.setItem(KEY, notesEach() ? "no" : "yes");
  return notesEach();
}

// An inversion as an act that is noted; its own id stands for having been noted.
export const asNoted = (act) => (act?.each && !act.command ? { ...act, command: act.each, sets: act.id } : act);

export function inversionToNote(script, letter, us, main) {
  if (!notesEach() || (main && script.due(main) <= us)) return undefined;
  const { noted, missed } = script.tankful(letter);
  const due = (act) => (us - script.due(act)) / S;
  const last = script.acts(letter).findLast((act) => act.each && script.lives(act, letter) && due(act) >= 0);
  const told = !last || due(last) > last.each_s || noted.includes(last.id) || missed.includes(last.id);
  return told || script.anchor(last.id) !== undefined ? undefined : asNoted(last);
}
