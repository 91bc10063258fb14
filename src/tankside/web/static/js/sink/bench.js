// The bottles as they stand on the bench: the wanted one taller and lifted, its neighbours in outline.
import { bottle, jug } from "./bottle.js";
import { el, fit, path, text } from "./svg.js";

// At most five: the wanted one and those nearest to it.
function shown(bench, code) {
  if (bench.length <= 5) return bench;
  const at = Math.max(0, bench.findIndex((one) => one.code === code));
  const from = Math.min(Math.max(0, at - 2), bench.length - 5);
  return bench.slice(from, from + 5);
}

// `guard` names the wanted bottle; without it all stand alike.
export function drawBench(svg, bench, wanted, { width, height, step = "measure", volume = "" }) {
  const bottles = shown(bench, wanted);
  const foot = height - 46, column = width / Math.max(bottles.length, 1);
  const wide = Math.min(72, column - 12), tall = foot - 26;
  const settle = [];
  svg.replaceChildren(el("path", { class: "ink-line", d: `M0 ${foot}H${width}`, "stroke-width": 3 }), path(`M0 ${foot + 6}H${width}`, { class: "ink-line", "stroke-width": 1 }));
  bottles.forEach((one, at) => {
    const is = one.code === wanted, left = column * at + (column - wide) / 2;
    const lifted = is && step === "measure" ? foot - 9 : foot - 1;
    const top = is ? lifted - tall + 10 : foot - 1 - tall * 0.74;
    const made = [bottle(one, { left, width: wide, top, foot: lifted, wanted: is, full: is && step === "measure" ? 0.78 : 0 })];
    if (is && step === "pour") made.push(jug(one, { left: left + 4, width: wide, foot: foot - 1, height: tall * 0.5, volume }));
    const name = text(left + wide / 2, foot + 30, one.name, { class: is ? "bench-name strong" : "bench-name", "text-anchor": "middle" });
    svg.append(...made.map((each) => each.drawn), name);
    settle.push(...made.map((each) => each.settle), () => fit(name, column - 4, 16, 11));
  });
  for (const each of settle) each();
}
