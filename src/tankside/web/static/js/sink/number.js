// The block that rides on the surface: bath, time, what it is left of.
import { el, fit, group, text } from "./svg.js";

const clamp = (low, value, high) => Math.min(Math.max(low, value), high);

// The size of the time, by the page and by how many digits it has; its whole block with one line above and below.
export function numberHeight({ width, height }, viewport, words, grow) {
  const wide = words.length > 4;
  const phone = wide
    ? clamp(58, Math.min(0.256 * viewport.width, 0.12 * viewport.height), 100)
    : clamp(72, Math.min(0.32 * viewport.width, 0.15 * viewport.height), 126);
  const large = Math.min((wide ? 0.21 : 0.265) * width, 0.2825 * viewport.height, 226);
  const above = grow > 1 ? 50 : 34, below = grow > 1 ? 56 : 38;
  const room = (height - 160 - above - below) / 0.72;
  const size = Math.max(44, Math.min(grow > 1 ? large : phone, room));
  return { size, above, below, digits: size * 0.72, block: above + size * 0.72 + below };
}

// Title, what, and the code it comes from: one line, serif and figures.
function title(view, x, y, size) {
  const { bath } = view;
  return text(x, y, "", { class: "bath-line", "font-size": size }).appendChild(
    el("tspan", { class: "strong" }, bath.name),
  ).parentNode;
}

export function drawNumber(svg, view, { size, number, block, grow, width }) {
  const x = size.block, room = width - x - 8;
  const under = block - (grow > 1 ? 21 : 14);
  const base = block - number.below;
  const words = text(x, base, view.big, { class: view.pour ? "big pour" : "big" });
  const above = title(view, x, base - number.digits - (grow > 1 ? 22 : 12), grow > 1 ? 24 : 18);
  if (view.bath.what) above.append(`, ${view.bath.what}`);
  if (view.bath.code && grow > 1) above.append(" ", el("tspan", { class: "code-words" }, view.bath.code));
  const below = text(x, under, view.under, { class: "under" });
  svg.append(group("number", above, words, below));
  fit(above, room, grow > 1 ? 24 : 18);
  fit(words, room, number.size, 48);
  fit(below, room, grow > 1 ? 21 : 17);
}

// What happens at the stop line, under it.
export function drawUnder(svg, view, { stop, grow, height, width }) {
  const { bath, phrases } = view;
  const y = stop + (height - stop) / 2 + 12;
  const words = text(14, y, "", { class: "at-end" });
  words.append(el("tspan", { class: "strong" }, view.over ? view.late : phrases["at-end"]), el("tspan", { dx: 9 }, bath.at_end));
  if (bath.at_end_code) words.append(el("tspan", { class: "code-words", dx: 9 }, bath.at_end_code));
  svg.append(words);
  fit(words, width - 24, grow > 1 ? 21 : 17);
}
