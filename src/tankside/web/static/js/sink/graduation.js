// The engraved scale: the same laws as web/drawing/graduation.py.
import { group, line, text } from "./svg.js";

const BETWEEN_MARKS = 4;
const BETWEEN_NUMERALS = 22;
const THINNING = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
export const LENGTH = { short: 12, middle: 21, long: 30 };
const WIDTH = { short: 1, middle: 1.25, long: 2 };

const thinned = (step, least) => THINNING.find((by) => step * by >= least) ?? Math.ceil(least / step);

function every(unit_px, middle, long) {
  if (unit_px >= BETWEEN_MARKS) return 1;
  if (long % middle === 0 && unit_px * middle >= BETWEEN_MARKS) return middle;
  return long * thinned(unit_px * long, BETWEEN_MARKS);
}

// Marks from 0 to `high` by `unit`, each with its value, its size and, at long ones, whether it is numbered.
export function graduation({ high, unit, length, middle, long }) {
  const unit_px = (unit * length) / high;
  const step = every(unit_px, middle, long);
  const numbered = long * thinned(unit_px * long, BETWEEN_NUMERALS);
  const marks = [];
  for (let count = 0; count * unit <= high + 1e-9; count += step) {
    const size = count % long === 0 ? "long" : count % middle === 0 ? "middle" : "short";
    marks.push({ value: count * unit, size, numbered: count % numbered === 0 });
  }
  return marks;
}

// A scale of time left: by seconds where the bath is short, by tens of seconds else.
export const timeScale = (s, length) =>
  s <= 150
    ? { marks: graduation({ high: s, unit: 1, length, middle: 5, long: 10 }), per: 1, counts: "seconds-left" }
    : { marks: graduation({ high: s, unit: 10, length, middle: 3, long: 6 }), per: 60, counts: "minutes-left" };

// Draws marks that start at x; `grow` multiplies lengths, `past` says which have gone by.
export function engrave(marks, { x = 0, at, grow = 1, per = 1, past = () => false, skip = () => false }) {
  const drawn = { true: group("past"), false: group("coming") };
  for (const mark of marks) {
    const y = at(mark.value);
    const into = drawn[past(mark.value)];
    into.append(
      line(x, y, x + LENGTH[mark.size] * grow, { class: "mark-line", "stroke-width": WIDTH[mark.size] * (grow > 1 ? 1.2 : 1) }),
    );
    if (mark.numbered && mark.value > 0 && !skip(y)) {
      into.append(text(x + 36 * grow, y + 5.5 * Math.sqrt(grow), String(mark.value / per), { class: "numeral" }));
    }
  }
  return [drawn.true, drawn.false];
}
