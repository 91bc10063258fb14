// Rings where hands are needed, and beads where they have been, in seconds left of the bath.
const S = 1e6;

export function ringsAndBeads(script, { letter, tankful, bath, us, poured, end }) {
  if (!poured) return { rings: planned(script, letter, bath), beads: [] };
  const left_s = (due) => (end - due) / S;
  const rings = script
    .ahead(us)
    .filter(({ act, due }) => act.cue && due > us && due < end && (act.tankful === letter || act.sets))
    .map(({ act, due }) => ring(act, letter, left_s(due)));
  return { rings, beads: beads(script, letter, tankful, bath, us, left_s) };
}

const ring = (act, letter, left_s) => ({
  id: act.id,
  left_s,
  other: act.tankful !== letter,
  named: act.named,
  opens: Boolean(act.guard) && act.tankful === letter,
  words: act.tankful === letter ? act.mark_words || act.words : `${act.tankful}: ${act.words}`,
  code: act.code,
});

// Before the pour the rings stand where they will be.
const planned = (script, letter, bath) =>
  script
    .acts(letter)
    .filter((act) => act.anchor === bath.begins && act.cue && act.after_s < bath.aim_s)
    .map((act) => ring(act, letter, bath.aim_s - act.after_s))
    .sort((one, two) => two.left_s - one.left_s);

function beads(script, letter, tankful, bath, us, left_s) {
  const begun = script.anchor(bath.begins);
  return script.acts(letter).flatMap((act) => {
    const noted = act.sets ? script.anchor(act.sets) : undefined;
    if (noted !== undefined) return noted > begun ? [{ left_s: left_s(noted), done: true }] : [];
    const due = script.due(act);
    if (act.sets || act.anchor !== bath.begins || due > us) return [];
    return [{ left_s: left_s(due), done: !tankful.missed.includes(act.id) }];
  });
}
