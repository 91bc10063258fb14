// The page as a vessel: the liquid is the time still to come, and its surface sinks to the stop line.
import { engrave, timeScale } from "./graduation.js";
import { drawNumber, drawUnder, numberHeight } from "./number.js";
import { doubt, drawBeads, drawRings, overtime, sizes, stopLine, stripe } from "./scale.js";
import { group, line, liquid, path, surface, text } from "./svg.js";
import { drawComing } from "./coming.js";
import { drawDoubted } from "./doubted.js";

// Overtime hatches no more than this share of the strip under the stop line; the rest is for its words.
const FREE_OF_WORDS = 0.3;

const FOOT = 66;
const SHORT_S = 120;

// Where everything stands down the page, for a bath with `left` seconds to its aim.
function layout(view, width, height) {
  const { bath, left, poured } = view;
  const grow = width >= 620 ? 1.7 : 1;
  const size = sizes(grow);
  const number = numberHeight({ width, height }, view.viewport, view.big, grow);
  const stop = height - FOOT;
  const top = Math.min(number.block + 8, stop - 90);
  const at = (s) => stop - ((stop - top) * s) / bath.aim_s;
  const raw = poured ? at(left) : top;
  const level = Math.min(Math.max(raw, top), height);
  const still = bath.aim_s < SHORT_S || !poured;
  const rest = stop - 18 - (grow > 1 ? 112 : 80);
  const surfaceAt = still ? top : Math.min(level, rest);
  return { width, height, grow, size, number, stop, top, at, level, block: surfaceAt, behind: level > surfaceAt + 1 };
}

export function drawVessel(svg, view, width, height) {
  const place = layout(view, width, height);
  const { bath, left, poured } = view;
  const scale = timeScale(bath.aim_s, place.stop - place.top);
  const past = (s) => poured && s > left;
  svg.replaceChildren(
    ...drawLiquid(view, place),
    ...engrave(scale.marks, { at: place.at, grow: place.grow, per: scale.per, past, skip: (y) => taken(place, y) }),
    head(view, place, scale.counts),
    ...drawStripe(view, place),
    ...drawDoubted(view, place),
    ...stopLine(width, place.stop, place.grow),
  );
  drawNumber(svg, view, place);
  drawComing(svg, view, place);
  drawUnder(svg, view, place);
}

function drawLiquid({ bath, left, over }, { width, height, stop, level, behind }) {
  const low = over ? Math.min(level, stop + (height - stop) * FREE_OF_WORDS) : level;
  const tint = { class: `tint-${bath.sign}` };
  const under = over ? null : path(liquid(0, width, level, stop), tint);
  const line_ = behind ? line(0, low, 116, { class: "surface" }) : path(surface(0, width, Math.min(low, stop)), { class: "surface" });
  return [under, over && bath.exact && overtime(width, stop, low), left > 0 || (over && bath.exact) ? line_ : null].filter(Boolean);
}

// Numerals keep clear of the head of the scale.
const taken = (place, y) => Math.abs(y - place.top) < 12;

function head({ phrases }, { top, grow }, counts) {
  return group(
    "head-of-scale",
    text(grow > 1 ? 8 : 4, top - 9, phrases[counts], { class: "counts" }),
    line(0, top, 68 * grow, { class: "counts-line" }),
  );
}

function drawStripe({ bath, rings, beads, poured, left }, { size, at, stop, level, top }) {
  const low = bath.low_s === null ? null : bath.aim_s - bath.high_s;
  const drawn = [stripe(bath.sign, size, 0, poured ? Math.min(level, stop) : top, stop)];
  if (low !== null) drawn.push(...doubt(size, Math.max(at(bath.aim_s - bath.low_s), Math.min(level, stop - 2)), at(low)));
  drawn.push(...drawRings(rings.filter((one) => one.left_s <= left).map((one) => ({ y: at(one.left_s), other: one.other })), size));
  return [...drawn, ...drawBeads(beads.map((one) => ({ y: at(one.left_s), done: one.done })), size).flat()];
}
