// The page at the sink, joined: clock, script, drawings, presses, queue and stream.
import { to } from "../address.js";
import { MainAct } from "./acts.js";
import { stayAwake } from "./awake.js";
import { Clock } from "./clock.js";
import { Cues } from "./cues/cues.js";
import { wakeSound } from "./cues/tone.js";
import { showView } from "./face.js";
import { listenToKeys } from "./keys.js";
import { Page } from "./page.js";
import { Sheets } from "./sheets.js";
import { Stream } from "./stream.js";
import { tick } from "./tick.js";

const { run, screen } = document.body.dataset;
const clock = new Clock();
const page = new Page(run, JSON.parse(screen), clock);
const sheets = new Sheets(page);
const cues = new Cues(clock);
const button = document.getElementById("main-act");
const main = new MainAct(button, {
  now: () => ({ early: button.dataset.early === "true" }),
  press: (id, held) => page.press(id, held),
  say: (phrase) => page.tell(phrase),
});

let shown = "";

function step() {
  if (clock.parted()) page.wake(true);
  const view = page.look({ width: innerWidth, height: innerHeight });
  main.offers(view.main?.id);
  page.showNotices((way) => press(way));
  draw(view);
  cues.step(page.script);
}

// A picture is made once a second, or when anything in it has changed.
function draw(view) {
  const { letter, shape, main: act, next } = view, stage = document.getElementById("stage");
  const now = [Math.floor(view.us / 1e6), letter, shape, act?.id, next?.id, next?.when, page.screen.seq, page.inTouch, page.soon?.letter, stage.clientWidth, stage.clientHeight].join(" ");
  if (now === shown) return;
  shown = now;
  showView(view, page.script, page);
}

function press(other) {
  if (other.sheet) sheets.open(other.sheet);
  else if (other.page) location.assign(to(other.page));
  else if (other.asks && !page.inTouch) page.tell("requests-off");
  else page.ask(other.command, { said: other.said });
}

for (const other of document.querySelectorAll("[data-other]")) other.addEventListener("click", () => other.button && press(other.button));
document.getElementById("vessel").addEventListener("click", ({ target }) => page.openAct(target.closest("[data-opens]")?.dataset.opens));
listenToKeys({
  main: () => main.key(),
  other: (key) => {
    const found = [...document.querySelectorAll("[data-other]:not([hidden])")].find((one) => one.button?.key === key);
    if (found) press(found.button);
    return Boolean(found);
  },
});
addEventListener("pointerdown", () => {
  wakeSound();
  stayAwake();
});
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState !== "visible") return;
  stayAwake();
  page.wake();
});
addEventListener("resize", step);
addEventListener("online", () => page.wake());
page.onChange = step;
new Stream(to(`/sink/${run}/stream`), { onScreen: (news) => page.take(news), onTouch: (inTouch) => page.touch(inTouch) });
tick.every(step);
step();
page.queue.send();
