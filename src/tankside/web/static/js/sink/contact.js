// Whether the server answers: what it tells after each attempt, and asking it again on waking.
import { to } from "../address.js";
import { Noting } from "./noting.js";
import { tick } from "./tick.js";

export class Contact extends Noting {
  // After an attempt to send: what the server shows now, and why it kept no more.
  heard(inTouch, screen, trouble) {
    this.touch(inTouch);
    this.trouble = trouble;
    if (screen) this.take(screen);
    else this.onChange();
  }

  touch(inTouch) {
    if (!inTouch) this.seen.wake();
    else if (!this.inTouch) this.queue.send();
    this.inTouch = inTouch;
  }

  wake(parted = false) {
    this.seen.wake();
    this.askAgain(parted);
  }

  async askAgain(parted = false) {
    const since = this.mayAsk() ? `?since=${Math.round(this.seen.since)}` : "";
    Object.assign(this, { asked_ms: tick.now(), asking: true });
    if (parted) this.clock.anchor(this.clock.us(), this.screen.pace);
    try {
      const from = tick.now();
      const answer = await fetch(to(`/sink/${this.run}/screen${since}`), { headers: { accept: "application/json" } });
      if (!answer.ok) throw new Error(`answered ${answer.status}`);
      const screen = await answer.json();
      if (since) this.meanwhile(screen.away);
      this.take(screen, tick.now() - from);
      this.touch(true);
      if (parted) this.tell("clocks-parted");
    } catch {
      this.touch(false);
    }
    this.asking = false;
  }
}
