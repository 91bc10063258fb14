// The state of the page: the last screen, what was noted since, and whether the server answers.
import { to } from "../address.js";
import { Contact } from "./contact.js";
import { soon } from "./owner.js";
import { Queue } from "./queue.js";
import { Script } from "./script.js";
import { Seen } from "./seen.js";
import { tick } from "./tick.js";
import { viewOf } from "./view.js";

const SOON_S = 8;
const ASK_MS = 5000;

export class Page extends Contact {
  constructor(run, screen, clock) {
    super();
    Object.assign(this, { run, clock, inTouch: true, onChange: () => {} });
    this.queue = new Queue(run, {
      address: to(`/sink/${run}/notes`),
      pace: () => this.screen.pace,
      onAnswer: (note, answer) => this.answered(note, answer),
      onTouch: (inTouch, screen, trouble) => this.heard(inTouch, screen, trouble),
    });
    this.seen = new Seen(run);
    this.asked_ms = tick.now();
    this.away = screen.away;
    this.take(screen);
  }

  // A new screen: the server's anchors hold, and over them what it has not heard of yet.
  take(screen, delay_ms) {
    if (this.screen && screen.seq < this.screen.seq) return;
    this.screen = screen;
    if (delay_ms === undefined) this.clock.hear(screen.now_us, screen.pace);
    else this.clock.anchor(screen.now_us, screen.pace, delay_ms);
    this.script = new Script(screen);
    for (const note of this.queue.kept) if (note.sets) this.script.note(note.sets, note.at_us);
    this.onChange();
  }

  look(viewport) {
    const us = this.clock.us();
    this.queue.again(ASK_MS);
    if (this.inTouch ? this.mayAsk() : tick.now() - this.asked_ms >= ASK_MS) this.askAgain();
    this.seen.look(us, this.inTouch);
    if (this.shown && this.shown.until <= us) this.shown = undefined;
    this.view = viewOf(this.script, us, { inTouch: this.inTouch, shown: this.shown?.letter, opened: this.opened, viewport });
    const next = soon(this.script, us, SOON_S);
    this.soon = next && this.script.tankful(next);
    return this.view;
  }
}
