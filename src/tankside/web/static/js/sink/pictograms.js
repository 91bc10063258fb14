// The pictograms that the page carries once, drawn again where a drawing wants them.
import { el } from "./svg.js";

export function pictogram(name, x, y, size) {
  const kept = document.querySelector(`[data-pictogram="${name}"] path`);
  if (!kept) return null;
  const scale = size / 36;
  return el("path", { class: "drawn-pictogram", d: kept.getAttribute("d"), transform: `translate(${x} ${y}) scale(${scale})` });
}

// The same beside the words of a button.
export function pictogramInto(svg, name) {
  if (svg.dataset.name === name) return;
  svg.dataset.name = name;
  const drawn = pictogram(name, 0, 0, 36);
  svg.replaceChildren(...(drawn ? [drawn] : []));
}
