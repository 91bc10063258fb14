// The reading stripe with rings, beads, doubt and the stop line.
import { box, el, group, line, path } from "./svg.js";

// Sizes of a phone page; a laptop's are 1.7 times as large along x.
export const sizes = (grow) => ({
  grow,
  stripe: 82 * grow,
  width: 16 * grow,
  thin: 5 * Math.min(grow, 1.6),
  ringFrom: 62 * grow,
  ring: grow > 1 ? 165 : 98,
  otherRing: grow > 1 ? 180 : 109,
  radius: grow > 1 ? 7 : 5,
  block: grow > 1 ? 189 : 110,
  words: grow > 1 ? 217 : 126,
});

// Thin above, broad and hatched below, two points meeting at the surface.
export function stripe(sign, { stripe: x, width, thin }, top, now, bottom) {
  const at = Math.min(Math.max(now, top), bottom);
  const up = Math.min(14, at - top), down = Math.min(24, bottom - at);
  const [t, b] = [thin / 2, width / 2];
  const broad = `${x},${at} ${x + b},${at + down} ${x + b},${bottom} ${x - b},${bottom} ${x - b},${at + down}`;
  return group(
    `stripe stripe-${sign}`,
    el("polygon", { class: "thin", points: `${x - t},${top} ${x + t},${top} ${x + t},${at - up} ${x},${at} ${x - t},${at - up}` }),
    bottom - at > 1 && el("polygon", { class: "broad", points: broad }),
    bottom - at > 1 && el("polygon", { points: broad, fill: `url(#hatch-${sign})` }),
  );
}

// rings: [{y, other}]; one too near the one before it keeps its line and loses its circle.
export function drawRings(rings, size) {
  const last = { true: -Infinity, false: -Infinity };
  return [...rings]
    .sort((one, two) => one.y - two.y)
    .map(({ y, other }) => {
      const circled = y - last[other] >= 8;
      if (circled) last[other] = y;
      const centre = other ? size.otherRing : size.ring;
      const from = other ? size.stripe + size.width / 2 : size.ringFrom;
      return group(
        "ring",
        line(from, y, centre - (circled ? size.radius : 0), { "stroke-width": other ? 1.25 : 2.4 }),
        circled && el("circle", { cx: centre, cy: y, r: size.radius, "stroke-width": 2.4 }),
      );
    });
}

// beads: [{y, done}] on the thin stripe, each with a fine line to its place on the scale; where one has no
// room for its square it keeps its line.
export function drawBeads(beads, size) {
  let last = -Infinity;
  return [...beads]
    .sort((one, two) => one.y - two.y)
    .map(({ y, done }) => {
      const squared = y - last >= 11 || !done;
      if (squared) last = y;
      return [
        line(size.ringFrom, y, size.stripe - 5, { class: "leader-past" }),
        squared && box(size.stripe - 5, y - 5, 10, 10, { class: done ? "bead done" : "bead missed" }),
      ].filter(Boolean);
    });
}

// The double line where a bath ends.
export const stopLine = (width, y, grow = 1) => [
  line(0, y, width, { class: "ink-line", "stroke-width": 3 }),
  line(0, y + 5.5 * Math.min(grow, 1.3), width, { class: "ink-line", "stroke-width": 1 }),
];

// An interval on the stripe, slanted ink from low to high.
export const doubt = (size, top, bottom) => [
  box(size.stripe - size.width / 2, top, size.width, bottom - top, { class: "stripe-ground" }),
  group("doubt", box(size.stripe - size.width / 2, top, size.width, Math.max(2, bottom - top), { fill: "url(#hatch-doubt)" })),
];

export const overtime = (width, top, bottom) =>
  bottom > top ? path(`M0 ${top}H${width}V${bottom}H0Z`, { fill: "url(#hatch-over)" }) : null;
