// A bottle with its cap and label, and the jug that is measured from it.
import { box, fit, group, path, round, text } from "./svg.js";

const CAPS = ["red", "orange", "yellow", "green", "blue", "brown", "grey", "white", "black"];

function outline(left, right, top, foot) {
  const tall = foot - top, wide = right - left, mid = (left + right) / 2;
  const neck = wide * 0.21, neckTop = top + tall * 0.07, neckFoot = top + tall * 0.15, shoulder = top + tall * 0.3;
  const bend = shoulder - tall * 0.07;
  return (
    `M${round(mid - neck)} ${round(neckTop)}V${round(neckFoot)}Q${round(left)} ${round(bend)} ${round(left)} ${round(shoulder)}` +
    `V${round(foot - 4)}q0 4 4 4H${round(right - 4)}q4 0 4 -4V${round(shoulder)}` +
    `Q${round(right)} ${round(bend)} ${round(mid + neck)} ${round(neckFoot)}V${round(neckTop)}`
  );
}

// One bottle over its foot; a wanted one is filled and hatched, unless its liquid stands in the jug.
export function bottle(one, { left, width, top, foot, wanted, full }) {
  const right = left + width, tall = foot - top, mid = left + width / 2;
  const shoulder = top + tall * 0.3, level = foot - (foot - shoulder) * full;
  const label = { y: top + tall * 0.49, height: Math.min(wanted ? 30 : 25, tall * 0.17) };
  const cap = CAPS.includes(one.cap) ? `cap cap-${one.cap}` : "cap";
  const code = text(mid, label.y + label.height / 2 + 5.5, one.code, { class: "label-code", "text-anchor": "middle" });
  const word = text(mid, top - 8, one.cap, { class: "cap-word", "text-anchor": "middle" });
  const drawn = group(
    wanted ? "bottle wanted" : "bottle",
    full > 0 && box(left, level, width, foot - level, { class: `tint-${one.sign}` }),
    full > 0 && box(left, level, width, foot - level, { fill: `url(#hatch-${one.sign})` }),
    full > 0 && path(`M${left} ${level}H${right}`, { class: "surface-thin" }),
    path(outline(left, right, top, foot), { class: "outline" }),
    box(mid - width * 0.25, top, width * 0.5, tall * 0.07, { class: cap }),
    box(left + 3, label.y, width - 6, label.height, { class: "label" }),
    code,
    word,
  );
  return { drawn, settle: () => [fit(code, width - 8, wanted ? 18 : 15, 10), fit(word, width + 10, 16, 11)] };
}

// The jug before its bottle, full to its mark.
export function jug(one, { left, width, foot, height, volume }) {
  const top = foot - height, right = left + width, level = top + height * 0.33;
  const marks = [0.22, 0.44, 0.66, 0.88].map((share, at) => `M${left} ${round(foot - height * 0.75 * share)}h${at % 2 ? 15 : 9}`);
  const words = text(left + width * 0.62, level + 20, volume, { class: "jug-words", "text-anchor": "end" });
  const hatch = left + width * 0.66;
  const drawn = group(
    "jug",
    box(left, top, width, height, { class: "jug-ground" }),
    box(left, level, width, foot - level, { class: `tint-${one.sign}` }),
    box(hatch, level, right - hatch, foot - level, { class: "stripe-ground" }),
    box(hatch, level, right - hatch, foot - level, { fill: `url(#hatch-${one.sign})` }),
    path(`M${left} ${level - 6}Q${left} ${level} ${left + 10} ${level}H${right - 10}Q${right} ${level} ${right} ${level - 6}`, { class: "surface-thin" }),
    path(marks.join(""), { class: "jug-line" }),
    path(`M${left - 11} ${top}Q${left} ${top + 3} ${left} ${top + 13}V${foot}H${right}V${top}Z`, { class: "jug-wall" }),
    path(`M${right} ${top + 17}h11v${round(height * 0.64)}h-11`, { class: "jug-wall" }),
    words,
  );
  return { drawn, settle: () => [fit(words, width * 0.45, 17, 12)] };
}
