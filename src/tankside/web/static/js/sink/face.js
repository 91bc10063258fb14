// Puts one view on the page: words into their places, drawings into their frames.
import { drawHands } from "./hands.js";
import { pictogramInto } from "./pictograms.js";
import { drawStage } from "./stage.js";
import { dueWords, heldFor } from "./due.js";
import { offerWhy } from "./why.js";
import { clockWords, fill, say } from "./words.js";

const get = (id) => document.getElementById(id);

export function showView(view, script, { inTouch, soon }) {
  const { shape, letter, tankful, phrases, us } = view;
  document.body.dataset.shape = shape;
  document.body.dataset.sign = view.bath?.sign ?? "";
  say(get("tankful"), fill(phrases.tankful, { letter }));
  say(get("tank"), soon ? fill(phrases["next-tankful"], soon) : wideEnough() ? tankful.tank_long : tankful.tank);
  say(get("clock"), clockWords(us, script.screen.zone));
  say(get("touch"), touchWords(script.screen, inTouch));
  showActs(view, script);
  offerWhy(view);
  drawStage(view, script);
  drawHands(view, script);
  say(get("timer"), timerWords(view));
  for (const place of document.querySelectorAll(".sheet-left")) say(place, view.poured ? view.big : "");
}

const wideEnough = () => innerWidth >= 900;

function touchWords({ watching, phrases }, inTouch) {
  if (!inTouch) return phrases["out-of-touch"];
  if (!watching || !wideEnough()) return phrases["in-touch"];
  return watching === 1 ? phrases["watching-one"] : fill(phrases.watching, { n: watching });
}

function showActs(view, script) {
  const { main } = view, button = get("main-act");
  button.hidden = !main;
  if (main) {
    button.dataset.act = main.id;
    const early = heldFor(script, main, view.us);
    button.dataset.early = String(early > 0);
    say(get("main-words"), main.button);
    say(get("main-hint"), fill(main.hint, { due: dueWords(view) }).replace(/^, /, ""));
    pictogramInto(get("main-pictogram"), main.pictogram);
  }
  showOthers(othersOf(view, script.screen));
}

// Beside a guard or an empty tank stand the act's own others, beside a bath its; in the end the ways on; More always.
function othersOf({ main, poured, bath, tankful }, { endings }) {
  if (!main) return [...endings, ...tankful.baths[0].others.slice(-1)];
  return main.others.length || !poured ? main.others : bath.others;
}

function showOthers(others) {
  for (const [at, place] of [...document.querySelectorAll("[data-other]")].entries()) {
    const other = others[at];
    place.hidden = !other;
    if (!other) continue;
    say(place.querySelector(".other-words"), other.words);
    say(place.querySelector("kbd"), other.key.toUpperCase());
    place.button = other;
  }
}

function timerWords({ bath, poured, left, over, phrases }) {
  if (!bath) return "";
  if (!poured) return fill(phrases["timer-waiting"], { name: bath.name });
  const s = Math.abs(Math.round(left));
  return fill(phrases[over ? "timer-over" : "timer"], { name: bath.name, m: Math.floor(s / 60), s: s % 60 });
}
