// What comes next, under the surface: the next act large, the named others beside their marks.
import { elbow, spread } from "./leaders.js";
import { drawNextAct } from "./next.js";
import { el, fit, path, text } from "./svg.js";
import { fill, minutes } from "./words.js";

export function drawComing(svg, view, place) {
  const { grow, stop, block, at } = place;
  const under = Math.max(block, place.top);
  const next = view.next;
  const tall = grow > 1 ? 108 : 70;
  const roomy = stop - under >= tall + 6;
  const first = next && roomy ? under + tall / 2 + 4 : null;
  if (first !== null) drawNextAct(svg, next, place, first, markOf(next, view.rings, place));
  const from = first === null ? under + 10 : under + tall + 6;
  const others = view.rings.filter((ring) => ring.named && ring.id !== next?.id && ring.left_s <= view.left && ring.left_s > 0);
  const height = grow > 1 ? 37 : 32;
  const wishes = others.map((ring) => ({ at: at(ring.left_s), height, rank: ring.other ? 1 : 2 }));
  spread(wishes, from, stop - 3).forEach((y, index) => {
    if (y !== null) drawNamed(svg, others[index], wishes[index].at, y, view, place);
  });
}

function markOf(next, rings, { at, stop, block }) {
  if (!rings.some((ring) => ring.id === next.id)) return null;
  const mark = at(next.left_s);
  return mark < stop && mark > block - 4 ? mark : null;
}

function drawNamed(svg, ring, mark, y, { phrases }, { size, width, grow }) {
  const x = size.words, from = (ring.other ? size.otherRing : size.ring) + size.radius;
  const when = text(x, y + 6, fill(phrases["at-left"], { t: minutes(ring.left_s) }), { class: "named-when" });
  const what = text(0, y + 6, ring.words, { class: "named-what" });
  if (ring.code) what.append(el("tspan", { class: "code-words", dx: 8 }, ring.code));
  const name = ring.opens ? { class: "named opens", "data-opens": ring.id } : { class: "named" };
  svg.append(el("g", name, path(elbow(from, mark, x - 4, y), { class: "leader" }), when, what));
  const full = grow > 1 ? 21 : 17;
  fit(when, 90 * grow, full);
  const second = x + Math.max(when.getComputedTextLength() + 12, grow > 1 ? 131 : width >= 360 ? 94 : 0);
  what.setAttribute("x", second);
  if (!fit(what, width - second - 12, full)) what.textContent = ring.short ?? ring.words.split(/[,;]/)[0];
  fit(what, width - second - 12, full);
}
