// A wash as a vessel: its scale is the fixer left in the film, by tens, and each fill steps the surface down.
import { drawNumber, numberHeight } from "./number.js";
import { drawNextAct } from "./next.js";
import { elbow, spread } from "./leaders.js";
import { doubt, drawBeads, sizes, stopLine, stripe } from "./scale.js";
import { along, engraveTens, ladder } from "./residual.js";
import { fit, line, liquid, path, surface, text } from "./svg.js";

export function drawWash(svg, view, width, height) {
  const { residual, sign } = view.bath;
  const grow = width >= 620 ? 1.7 : 1;
  const size = sizes(grow);
  const top = 30, bottom = height - 8;
  const at = ladder(residual, top, bottom);
  const level = view.poured ? at(along(residual.fills[residual.fill - 1].trace, view.had)) : at(residual.start);
  const stop = at(residual.limit);
  const next = grow > 1 ? 108 : 70;
  // The number stands whole between the top of the page and the next act, however low the page.
  const number = numberHeight({ width, height: Math.min(height, stop - next + 150) }, view.viewport, view.big, grow);
  const block = Math.min(Math.max(level, number.block + 4), stop - next - 6);
  const place = { size, number, block, grow, width, stop, at: null, height, top: block };
  svg.replaceChildren(
    path(liquid(0, width, level, height), { class: `tint-${sign}` }),
    path(surface(0, width, level), { class: "surface" }),
    ...engraveTens(residual, at, grow, level),
    text(4, 17, view.phrases.residual, { class: "counts" }),
    stripe(sign, size, 0, level, height),
    ...doubt(size, at(residual.last[2]), at(residual.last[1])),
    line(size.stripe - size.width / 2 - 4, at(residual.last[0]), size.stripe + size.width / 2 + 4, { class: "ink-line", "stroke-width": 3 }),
    ...stopLine(width, stop, grow),
  );
  const lastAt = lastWordsAt(residual, at, place, level);
  drawPast(svg, residual, at, place, [block - number.block, block + next + 8, lastAt]);
  drawNumber(svg, view, place);
  drawNextAct(svg, view.next, place, block + next / 2 + 2);
  drawLimit(svg, residual, at, place, lastAt);
}

// What the fills so far came to, as beads with words: above the number, or under the next act.
function drawPast(svg, residual, at, { size, width, height, grow, stop }, [above, under, lastAt]) {
  const beads = [{ value: residual.start, words: residual.start_words }];
  for (const one of residual.fills.slice(0, residual.fill - 1)) beads.push({ value: one.trace.at(-1)[1], words: one.words });
  svg.append(...drawBeads(beads.map(({ value }) => ({ y: at(value), done: true })), size).flat());
  const wishes = beads.map(({ value, words }) => ({ at: at(value), height: 26 * Math.sqrt(grow), rank: 0, words }));
  const high = wishes.filter((one) => one.at <= under), low = wishes.filter((one) => one.at > under);
  const placed = [...spread(high, 22, Math.max(above, 22)), ...spread(low, Math.max(under, stop + 30), lastAt === null ? height - 10 : lastAt - 12)];
  [...high, ...low].forEach((wish, index) => {
    if (placed[index] === null) return;
    const y = placed[index], words = text(size.words - 6, y + 6, wish.words, { class: "past-words" });
    svg.append(path(elbow(size.stripe + 5, wish.at, size.words - 10, y), { class: "leader-past" }), words);
    fit(words, width - size.words - 2, grow > 1 ? 19 : 16);
  });
}

// The words of the last fill keep clear of the surface and of the limit; where nothing is free they are not drawn.
function lastWordsAt(residual, at, { stop, grow, height }, level) {
  const free = stop + (grow > 1 ? 56 : 48);
  const wished = Math.min(Math.max(at(residual.last[0]) - 4, free), height - 46);
  if (wished >= free && Math.abs(wished + 8 - level) > 34) return wished;
  if (height - level > 30) return level + 22;
  return level - 52 >= free ? level - 52 : null;
}

function drawLimit(svg, residual, at, { size, width, height, stop, grow }, y) {
  const limit = text(width - 12, stop + 24 * Math.sqrt(grow), residual.limit_words, { class: "limit-words", "text-anchor": "end" });
  const drawn = [limit];
  if (y !== null) drawn.push(text(size.words, y + 6, residual.last_words, { class: "named-what" }));
  const second = y + 6 + 20 * Math.sqrt(grow);
  if (y !== null && second < height - 4) drawn.push(text(size.words, second, residual.last_doubt, { class: "past-words" }));
  if (y !== null) svg.append(path(elbow(size.stripe + 14, at(residual.last[0]), size.words - 4, y), { class: "leader" }));
  svg.append(...drawn);
  for (const one of drawn) fit(one, width - size.words - 8, grow > 1 ? 20 : 16);
}
