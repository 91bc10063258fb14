// Which tankful the page belongs to, and which one soon will.
const S = 1e6;

// One that waits for a note and may not wait, else the one whose cue came last.
export function owner(script, us) {
  const late = script.ahead(us).find(({ act, due }) => act.sets && act.cue && !act.patient && due <= us);
  if (late) return late.act.tankful;
  let letter, latest = -Infinity;
  for (const act of script.screen.acts) {
    const at = called(script, act);
    if (at !== undefined && at <= us && at > latest) [letter, latest] = [act.tankful, at];
  }
  return open(script, letter) ?? script.ahead(us)[0]?.act.tankful ?? first(script);
}

// When an act called for hands: when it was noted, else when it fell due.
function called(script, act) {
  const noted = act.sets ? script.anchor(act.sets) : undefined;
  return noted ?? (script.lives(act, act.tankful) ? script.due(act) : undefined);
}

// The letter, if anything is left to do for it.
const open = (script, letter) => (letter !== undefined && script.coming(letter).length ? letter : undefined);

function first(script) {
  const left = script.screen.tankfuls.find(({ letter }) => script.coming(letter).length);
  return (left ?? script.screen.tankfuls.at(-1)).letter;
}

// The tankful that will own the page within `s` seconds, if it is another one.
export function soon(script, us, s) {
  const here = owner(script, us);
  const next = script.ahead(us).find(({ due }) => due > us);
  return next && next.due - us <= s * S && next.act.tankful !== here ? next.act.tankful : undefined;
}
