// What the page shows at one moment, from the script: one frozen answer, drawn by the rest.
import { orLeft } from "./doubted.js";
import { inversionToNote } from "./each.js";
import { owner } from "./owner.js";
import { ringsAndBeads } from "./rings.js";
import { clockWords, fill, minutes, span } from "./words.js";

const S = 1e6;

export function viewOf(script, us, { inTouch = true, shown, opened, viewport }) {
  const letter = shown ?? owner(script, us);
  const tankful = script.tankful(letter);
  const first = script.main(letter, us, inTouch);
  const main = openedAct(script, opened, letter) ?? inversionToNote(script, letter, us, first) ?? first;
  const there = script.bath(letter);
  const bath = there ?? tankful.baths.find((one) => one.begins === main?.sets);
  const view = { letter, tankful, main, bath, viewport, phrases: script.screen.phrases, us, poured: Boolean(there) };
  if (bath) {
    Object.assign(view, running(script, view));
    Object.assign(view, ringsAndBeads(script, view));
  }
  view.next = nextOf(script, view);
  return { ...view, shape: shapeOf(view), due: main && script.due(main), emptied: emptied(script, view) };
}

const openedAct = (script, opened, letter) => script.coming(letter).find((act) => act.id === opened);

function shapeOf({ main, bath, poured, left }) {
  if (main?.guard?.step === "measure") return "measure";
  if (main?.guard && (!poured || left <= 0)) return "pour";
  if (!bath) return "plain";
  return bath.residual ? "wash" : "vessel";
}

function running(script, { bath, phrases, us, poured, tankful }) {
  if (!poured) return { left: bath.aim_s, had: 0, over: false, big: phrases.pour, pour: true, under: bath.under, end: us + bath.aim_s * S };
  const begun = script.anchor(bath.begins);
  const had = (us - begun) / S, left = bath.aim_s - had;
  const over = left <= -0.5;
  return { begun, had, left, over, end: begun + bath.aim_s * S, big: over ? `+${minutes(-left)}` : minutes(Math.max(left, 0)), ...beyond(script, bath, { begun, had, left, over, phrases, tankful }) };
}

// After the aim: an exact bath is late, any other may stay, for ever or until its most.
function beyond(script, bath, { begun, had, left, over, phrases, tankful }) {
  if (!over) return { under: orLeft({ tankful, phrases }, left, bath.under) };
  const late = fill(phrases.over, { t: span(-left) });
  if (bath.most_s === null) return { under: phrases["longer-harmless"], late };
  if (had < bath.most_s && !bath.exact) {
    return { under: fill(phrases["stay-until"], { t: clockWords(begun + bath.most_s * S, script.screen.zone) }), late };
  }
  return { under: had < bath.most_s ? bath.after : fill(phrases["too-long"], { t: span(-left) }), late };
}

// A cue that is being carried out stays until its hands are done; else what comes first. A developer that is over
// comes out before anything else is done.
function nextOf(script, { letter, us, end, phrases, main, bath, over }) {
  const now = script.screen.acts.find((act) => {
    const due = script.due(act);
    return !act.sets && due !== undefined && script.lives(act, act.tankful) && due <= us && us < due + act.for_s * S;
  });
  const out = over && bath.exact && main && script.due(main) <= us;
  const first = now ? { act: now, due: us } : out ? { act: main, due: script.due(main) } : script.ahead(us).find(({ act }) => act.cue);
  if (!first) return undefined;
  const { act, due } = first, own = act.tankful === letter, s = (due - us) / S;
  const when = s >= 0.5 ? fill(phrases.in, { t: span(s) }) : now || s > -1 ? phrases.now : fill(phrases.ago, { t: span(-s) });
  return { ...act, act, due, when, other: !own, title: own ? act.title : `${act.tankful}: ${act.words}`, left_s: end === undefined || now ? undefined : (end - due) / S };
}

// Since when the tank of this tankful has been empty, in seconds; null where it is not.
function emptied(script, { letter, poured, us }) {
  if (poured) return null;
  const ends = script.tankful(letter).baths.flatMap((one) => one.ends).map((name) => script.anchor(name)).filter((at) => at !== undefined);
  return ends.length ? Math.max(0, (us - Math.max(...ends)) / S) : null;
}
