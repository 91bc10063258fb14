// The other tanks as small vessels, each with its words; a press shows its page.
import { box, el, group, line, liquid, path, surface, text } from "./svg.js";
import { minutes, say } from "./words.js";

const W = 74, H = 150, LEFT = 26;

export function drawTanks(list, { letter, us, phrases }, script) {
  const others = script.screen.tankfuls.filter((one) => one.letter !== letter && !one.ended);
  while (list.children.length > others.length) list.lastElementChild.remove();
  while (list.children.length < others.length) list.append(tank());
  others.forEach((one, at) => fillTank(list.children[at], one, script.bath(one.letter), us, script, phrases));
}

function tank() {
  const item = document.createElement("li");
  const button = document.createElement("button");
  button.type = "button";
  button.className = "tank";
  const picture = el("svg", { width: W + LEFT, height: H, "aria-hidden": "true", focusable: "false" });
  const words = document.createElement("span");
  for (const name of ["tank-name", "tank-left", "tank-under"]) {
    const part = document.createElement("span");
    part.className = name;
    words.append(part, " ");
  }
  button.append(picture, words);
  item.append(button);
  return item;
}

function fillTank(item, tankful, bath, us, script, phrases) {
  const button = item.firstElementChild, [name, left, under] = button.lastElementChild.children;
  button.dataset.tankful = tankful.letter;
  const s = bath ? bath.aim_s - (us - script.anchor(bath.begins)) / 1e6 : 0;
  say(name, bath ? `${tankful.letter}, ${bath.name.toLowerCase()}` : `${tankful.letter}, ${tankful.tank}`);
  say(left, bath ? (s < 0 ? `+${minutes(-s)}` : minutes(s)) : "");
  say(under, bath ? bath.under : phrases["next-tankful"].split(":")[0]);
  draw(button.firstElementChild, bath, Math.max(0, s));
}

function draw(svg, bath, left) {
  const foot = H - 6, lip = 8, right = LEFT + W - 4, whole = bath ? Math.max(60, Math.ceil(bath.aim_s / 60) * 60) : 300;
  const at = (s) => foot - ((foot - lip - 22) * s) / whole;
  const step = Math.ceil(whole / 60 / 5);
  const marks = [];
  for (let minute = 0; minute * 60 <= whole; minute += step) {
    marks.push(line(LEFT, at(minute * 60), LEFT + 18, { class: "mark-line" }), text(LEFT - 6, at(minute * 60) + 5, String(minute), { class: "numeral light", "text-anchor": "end" }));
  }
  const y = at(left);
  svg.replaceChildren(
    group("tank-liquid", bath && left > 0 && path(liquid(LEFT, right, y, foot, 5), { class: `tint-${bath.sign}` })),
    ...(bath && left > 0 ? [box(right - 24, y, 24, foot - y, { class: "stripe-ground" }), box(right - 24, y, 24, foot - y, { fill: `url(#hatch-${bath.sign})` }), path(surface(LEFT, right, y, 5), { class: "surface-thin" })] : []),
    path(`M${LEFT} ${lip}V${foot}M${right} ${lip}V${foot}`, { class: "wall" }),
    line(LEFT - 6, foot + 1.5, right + 6, { class: "ink-line", "stroke-width": 3 }),
    ...marks,
  );
}
