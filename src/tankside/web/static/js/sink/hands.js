// Beside the vessel on a laptop: what the hands do next, the bottles, the other tanks. On any page the list is spoken.
import { drawBench } from "./bench.js";
import { drawTanks } from "./tanks.js";
import { clockWords, say } from "./words.js";

const LISTED = 3;
const get = (id) => document.getElementById(id);

export function drawHands(view, script) {
  const ahead = script.ahead(view.us).filter(({ act, due }) => act.cue && due > view.us && act.id !== view.next?.id);
  const rows = ahead.slice(0, LISTED - 1).map(({ act, due }) => row(act, clockWords(due, script.screen.zone, true)));
  const list = get("hands-list");
  if (list.textContent !== rows.map((one) => one.textContent).join("")) list.replaceChildren(...rows);
  say(get("hands-when"), view.next?.when ?? "");
  say(get("hands-what"), view.next ? `${view.next.tankful} ${view.next.words}` : view.phrases["nothing-next"]);
  const side = get("hands-bench");
  if (!side.clientWidth) return;
  const wanted = nearestBottle(view, ahead);
  drawBench(get("hands-bottles"), script.screen.bench, wanted, { width: side.clientWidth, height: side.clientHeight });
  drawTanks(get("hands-tanks"), view, script);
}

const nearestBottle = (view, ahead) =>
  view.main?.guard?.code ?? [view.next, ...ahead.map(({ act }) => act)].find((act) => act?.code)?.code ?? "";

function row(act, when) {
  const made = document.createElement("li");
  for (const [tag, words, name] of [["time", when, ""], ["b", act.tankful, ""], ["span", act.words, ""], ["b", act.code, "code"]]) {
    if (!words) continue;
    const part = document.createElement(tag);
    part.textContent = words;
    if (name) part.className = name;
    made.append(part, " ");
  }
  return made;
}
