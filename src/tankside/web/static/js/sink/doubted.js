// A doubted clock: the other reading is a second surface, with hatch between the two at the right wall.
import { box, group, line } from "./svg.js";
import { fill, minutes } from "./words.js";

const HATCH = 14;

export function drawDoubted({ left, tankful, poured }, { width, at, level, stop, grow }) {
  if (!poured || !tankful.doubted_s || left <= 0) return [];
  const other = Math.min(at(left - tankful.doubted_s), stop), from = width - HATCH * grow;
  const hatch = box(from, level, HATCH * grow, other - level, { fill: "url(#hatch-over)" });
  return [group("doubted", hatch, line(0, other, 116, { class: "surface" }), line(from, other, width, { class: "surface" }))];
}

// Under the number stands the other reading, for as long as a clock is doubted.
export function orLeft({ tankful, phrases }, left, under) {
  if (!tankful.doubted_s) return under;
  return fill(phrases["or-left"], { t: minutes(Math.max(0, left - tankful.doubted_s)) });
}
