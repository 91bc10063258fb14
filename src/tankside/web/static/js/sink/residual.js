// The scale of a residual, engraved by tens.
import { group, line, text } from "./svg.js";

const STEPS = [1, 2, 3, 4, 5, 6, 7, 8, 9];
const NUMBERED = [1, 2, 5];

// How far the scale goes on under the floor, where nothing is engraved.
const UNDER = 4;

// Where a residual stands: equal lengths for equal factors, less further down.
export const ladder = ({ high, floor }, top, bottom) => (value) => {
  const low = floor / UNDER;
  return top + ((bottom - top) * Math.log(high / Math.min(Math.max(value, low), high))) / Math.log(high / low);
};

// The residual at `s` seconds into a soak, straight between the points of its trace.
export function along(trace, s) {
  const after = trace.findIndex(([at]) => at >= s);
  if (after === 0) return trace[0][1];
  if (after < 0) return trace.at(-1)[1];
  const [[a, from], [b, to]] = [trace[after - 1], trace[after]];
  return from * (to / from) ** ((s - a) / (b - a));
}

export function engraveTens(residual, at, grow, level) {
  const past = group("past"), coming = group("coming");
  for (let decade = 10; decade >= residual.floor / 10; decade /= 10) {
    for (const step of STEPS) {
      const value = Number((step * decade).toPrecision(2));
      if (value > residual.high || value < residual.floor) continue;
      const y = at(value), into = y < level ? past : coming;
      const [length, wide] = step === 1 ? [30, 2] : step === 5 ? [21, 1.25] : [12, 1];
      into.append(line(0, y, length * grow, { class: "mark-line", "stroke-width": wide }));
      if (NUMBERED.includes(step) && Math.abs(y - level) > 10) into.append(text(35 * grow, y + 5, String(value), { class: step === 1 ? "numeral" : "numeral light" }));
    }
  }
  return [past, coming];
}
