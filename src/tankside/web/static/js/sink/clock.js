// Time of the run, counted from the server's last answer on a clock that no one can set.
import { tick } from "./tick.js";

const PARTED_MS = 2000;

export class Clock {
  // `delay_ms` is how long the answer was under way; half of it is taken as already gone.
  anchor(server_us, pace, delay_ms = 0) {
    this.pace = pace;
    this.server_us = server_us;
    this.at_ms = tick.now() - delay_ms / 2;
    this.wall_ms = tick.wall();
    this.seen_ms = tick.now();
  }

  // News that came by itself was under way for an unknown while: it may move the time on, never back.
  hear(server_us, pace) {
    if (this.server_us === undefined || pace !== this.pace || server_us > this.us()) this.anchor(server_us, pace);
  }

  us() {
    return this.server_us + (tick.now() - this.at_ms) * 1000 * this.pace;
  }

  // Browser milliseconds from now until an instant of the run.
  until_ms(us) {
    return (us - this.us()) / 1000 / this.pace;
  }

  // Whether wall and steady clock have parted: the device slept, or somebody set its clock.
  parted() {
    return Math.abs(tick.wall() - this.wall_ms - (tick.now() - this.seen_ms)) >= PARTED_MS;
  }
}
