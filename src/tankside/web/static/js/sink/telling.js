// What the page tells the person, in plates between the vessel and the acts.
import { canStayAwake } from "./awake.js";
import { soundAt, wakeSound } from "./cues/tone.js";
import { showNotices } from "./notices.js";
import { tick } from "./tick.js";
import { fill } from "./words.js";

const TELL_MS = 6000;

export class Telling {
  // Before anything is noted there is time to try the sound and to ask whether the screen stays on.
  beforeAll() {
    return !this.checked && this.screen.acts.every((act) => !act.sets || this.script.anchor(act.sets) === undefined);
  }

  // What happened meanwhile is asked only once everything noted here is stored.
  mayAsk() {
    return this.seen.since !== undefined && !this.queue.kept.length && !this.asking;
  }

  // What the server says of the time in which nobody looked; it stands until something is noted, or it was read.
  meanwhile(away) {
    this.away = away;
    this.seen.told();
  }

  tell(phrase) {
    this.told = { words: this.screen.phrases[phrase], ms: tick.now() };
    this.onChange();
    return true;
  }

  showNotices(onWay) {
    const { phrases } = this.screen, facts = [];
    Object.assign(document.body.dataset, { kept: this.queue.kept.length, watching: this.screen.watching });
    const waiting = this.inTouch ? 0 : this.queue.kept.length;
    // The head of the page says it as well, so that another plate keeps the room.
    if (!this.inTouch && !this.away && !this.screen.notices.length) facts.push(phrases["requests-off"]);
    if (waiting) facts.push(fill(phrases["kept-here"], { n: waiting }));
    if (this.told && tick.now() - this.told.ms < TELL_MS) facts.push(this.told.words);
    if (this.beforeAll() && !facts.length) facts.push(phrases[canStayAwake() ? "screen-stays-on" : "no-wake-lock"]);
    const notices = facts.length ? [{ kind: "fact", sentence: facts.join(" ") }] : [];
    if (this.beforeAll()) notices[0].ways = [{ words: phrases["sound-check"], check: true }];
    if (this.trouble) notices.push({ ...this.trouble, heading: phrases["not-stored"] });
    if (this.said) notices.push(this.said.notice);
    const told = this.screen.notices.map((notice) => ({ ...notice, ways: notice.ways.filter((way) => !this.isMain(way)) }));
    const { away } = this, rest = away ? told.filter(({ about }) => !about || about !== away.about) : told;
    const first = away ? [{ ...away, ways: [...away.ways.filter((way) => !this.isMain(way)), { words: phrases["away-read"], read: true }] }] : [];
    showNotices(document.getElementById("notices"), [...first, ...rest, ...notices], (way) => this.way(way, onWay));
  }

  read() {
    this.away = undefined;
    this.onChange();
  }

  // The two tones, heard once, are enough for the evening.
  check() {
    wakeSound();
    soundAt(0);
    this.checked = true;
    this.onChange();
  }

  // A way on that the main act already is needs no second button.
  isMain({ command }) {
    const main = this.view?.main?.command;
    return main && command?.kind === main.kind && command.bath === main.bath;
  }

  way(way, onWay) {
    this.said = undefined;
    if (way.read) this.read();
    else if (way.check) this.check();
    else onWay(way);
  }
}
