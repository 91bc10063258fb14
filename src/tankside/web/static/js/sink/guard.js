// The left edge of the guard: the running bath made small, or how long the tank has been empty.
import { engrave, graduation, timeScale } from "./graduation.js";
import { drawRings, stripe } from "./scale.js";
import { el, fit, group, line, liquid, path, surface, text } from "./svg.js";

const EDGE = 97;
const SMALL = { grow: 1, stripe: 73, width: 14, thin: 4, ringFrom: 80, ring: 87, otherRing: 87, radius: 4 };

// Measuring: the bath goes on, and its surface sinks in a vessel along the edge.
export function drawRunning(svg, view, height) {
  const { bath, left, rings, phrases } = view;
  const stop = height - 12, top = 34;
  const at = (s) => stop - ((stop - top) * s) / bath.aim_s;
  const level = Math.min(at(Math.max(left, 0)), stop);
  const scale = timeScale(bath.aim_s, stop - top);
  const own = rings.filter((ring) => !ring.other && ring.left_s <= left);
  const head = text(4, 17, phrases[scale.counts], { class: "counts" });
  svg.replaceChildren(
    path(liquid(0, EDGE, level, stop), { class: `tint-${bath.sign}` }),
    path(surface(0, EDGE, level), { class: "surface-thin" }),
    ...engrave(scale.marks, { at, grow: 1, per: scale.per, past: (s) => s > left, skip: (y) => y < 26 }),
    stripe(bath.sign, SMALL, 22, level, stop),
    ...drawRings(own.map((ring) => ({ y: at(ring.left_s), other: false })), SMALL),
    path(`M${EDGE} 0V${stop}`, { class: "wall" }),
    line(0, stop, EDGE + 4, { class: "ink-line", "stroke-width": 3 }),
    line(0, stop + 6, EDGE + 4, { class: "ink-line", "stroke-width": 1 }),
    head,
  );
  fit(head, EDGE - 8, 14, 12);
}

// Pouring: seconds over the stop line, down to when the next bath must be in.
export function drawEmpty(svg, { before_s, empty_s, sign, phrases, before }, height) {
  const top = 42, bottom = height - 62, most = Math.max(before_s, 10);
  const at = (s) => top + ((bottom - top) * Math.min(s, most)) / most;
  const now = at(empty_s);
  const marks = graduation({ high: most, unit: 1, length: bottom - top, middle: 5, long: 10 }).filter((mark) => mark.value > 0);
  svg.replaceChildren(
    text(4, 24, phrases.seconds, { class: "counts" }),
    ...engrave(marks.map((mark) => ({ ...mark, numbered: false })), { at, past: (s) => s < empty_s }),
    ...marks.filter((mark) => mark.numbered && mark.value < most).map((mark) => text(36, at(mark.value) + 5, `+${mark.value}`, { class: "numeral" })),
    el("path", { class: `stripe-line stripe-${sign}`, d: `M82 0V${top}`, "stroke-width": 5 }),
    group("doubt", el("rect", { x: 74, y: top + 6, width: 16, height: Math.max(2, now - top - 6), fill: "url(#hatch-doubt)" })),
    line(66, now, EDGE, { class: "ink-line", "stroke-width": 2.4 }),
    line(0, top, EDGE, { class: "ink-line", "stroke-width": 3 }),
    line(0, top + 6, EDGE, { class: "ink-line", "stroke-width": 1 }),
    line(0, bottom, EDGE, { class: "ink-line", "stroke-width": 2 }),
    text(4, bottom + 22, phrases["pour-before"], { class: "counts" }),
    text(4, bottom + 42, before, { class: "numeral strong" }),
  );
}
