// The picture of one view: a vessel, a wash, a guard over its bench, or plain words.
import { drawBench } from "./bench.js";
import { drawEmpty, drawRunning } from "./guard.js";
import { drawVessel } from "./vessel.js";
import { drawWash } from "./wash.js";
import { fill, minutes, say, span } from "./words.js";

const get = (id) => document.getElementById(id);

export function drawStage(view, script) {
  const stage = get("stage"), svg = get("vessel");
  const { clientWidth: width, clientHeight: height } = stage;
  if (!width || !height) return;
  if (view.shape === "vessel") drawVessel(svg, view, width, height);
  else if (view.shape === "wash") drawWash(svg, view, width, height);
  else if (view.shape === "plain") showPlain(view);
  else showGuard(view, script);
}

function showGuard(view, script) {
  const { main, phrases } = view, { guard } = main;
  const pouring = guard.step === "pour";
  const waits = pouring && view.emptied !== null;
  say(get("guard-left"), view.poured ? fill(phrases.left, { t: minutes(view.left) }) : "");
  say(get("guard-next"), view.poured ? nextInLine(view, script) : "");
  say(get("guard-lead"), waits ? fill(phrases["empty-for"], { t: span(view.emptied) }) : guard.lead);
  for (const part of ["name", "code", "where", "then"]) say(get(`guard-${part}`), guard[part]);
  get("guard-words").dataset.running = String(!pouring && view.poured);
  const edge = get("vessel"), height = get("guard-words").offsetHeight;
  const before_s = guard.before_s ?? 30;
  if (!pouring && view.poured) drawRunning(edge, view, Math.max(height, 150));
  else if (waits) drawEmpty(edge, { before_s, empty_s: view.emptied, sign: lastSign(view, script), phrases, before: `+${minutes(before_s)}` }, Math.max(height, 150));
  else edge.replaceChildren();
  const bench = get("bench"), { clientWidth, clientHeight } = bench.parentNode;
  drawBench(bench, script.screen.bench, guard.code, { width: clientWidth, height: clientHeight, step: guard.step, volume: guard.volume });
}

// The first thing beside the measuring itself: 'invert in 30 s'.
function nextInLine({ main, us, letter, phrases }, script) {
  const first = script.ahead(us).find(({ act, due }) => act.cue && act.id !== main.id && due > us);
  if (!first) return "";
  const own = first.act.tankful === letter ? "" : `${first.act.tankful}: `;
  return `${own}${first.act.title.split(",")[0].toLowerCase()} ${fill(phrases.in, { t: span((first.due - us) / 1e6) })}`;
}

// The sign of the bath that was in the tank last, for the stripe above the stop line.
const lastSign = ({ letter }, script) =>
  script.tankful(letter).baths.findLast((bath) => script.anchor(bath.begins) !== undefined)?.sign ?? "wash";

function showPlain({ main, tankful, phrases }) {
  get("vessel").replaceChildren();
  say(get("plain-heading"), main ? main.title : phrases["all-hung"]);
  say(get("plain-words"), main ? "" : tankful.ended);
}
