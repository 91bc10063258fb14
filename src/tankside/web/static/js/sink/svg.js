// Small builders for drawings: elements with attributes, never with styles.
const NS = "http://www.w3.org/2000/svg";

export function el(name, attributes = {}, ...inside) {
  const made = document.createElementNS(NS, name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined && value !== null) made.setAttribute(key, typeof value === "number" ? round(value) : value);
  }
  made.append(...inside.flat(Infinity).filter((one) => one !== null && one !== undefined && one !== false));
  return made;
}

export const round = (value) => Math.round(value * 100) / 100;
export const group = (name, ...inside) => el("g", { class: name }, ...inside);
export const path = (d, attributes = {}) => el("path", { d, ...attributes });
export const line = (x, y, to, attributes = {}) => path(`M${round(x)} ${round(y)}H${round(to)}`, attributes);
export const box = (x, y, width, height, attributes = {}) =>
  el("rect", { x, y, width: Math.max(0, width), height: Math.max(0, height), ...attributes });
export const text = (x, y, words, attributes = {}) => el("text", { x, y, ...attributes }, words);

// A surface climbs both walls; it is read at its flat part.
export function surface(left, right, y, climb = 9) {
  const reach = Math.min(2 * climb, (right - left) / 2);
  return `M${left} ${round(y - climb)}Q${left} ${round(y)} ${left + reach} ${round(y)}H${right - reach}Q${right} ${round(y)} ${right} ${round(y - climb)}`;
}

export const liquid = (left, right, y, bottom, climb = 9) =>
  `${surface(left, right, y, climb)}V${round(bottom)}H${left}Z`;

// Text made smaller until it fits its room; never under `least`.
export function fit(words, room, size, least = 14) {
  let now = size;
  words.setAttribute("font-size", now);
  const wide = words.getComputedTextLength();
  if (wide > room) {
    now = Math.max(least, Math.floor((size * room) / wide));
    words.setAttribute("font-size", now);
  }
  return words.getComputedTextLength() <= room + 1;
}
