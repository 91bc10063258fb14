// What was noted here and not yet answered: kept over a reload, sent as one array, oldest first.
import { device, nextNumber } from "./device.js";
import { tick } from "./tick.js";


export class Queue {
  // `onAnswer(note, answer)` is called for each; `onTouch(inTouch)` after each attempt.
  constructor(run, { address, pace, onAnswer, onTouch }) {
    Object.assign(this, { address, pace, onAnswer, onTouch });
    this.device = device();
    this.key = `tankside-queue-${run}`;
    this.kept = JSON.parse(localStorage.getItem(this.key) ?? "[]");
    for (const note of this.kept) note.reloaded = true;
    this.sending = false;
  }

  add(asked, { ago_s = 0, saw_seq = null, sets = "", at_us, how = "tapped" }) {
    const note = { id: `${this.device}:${nextNumber()}`, asked, ago_s, saw_seq, sets, at_us, how, ms: tick.now(), wall: tick.wall() };
    this.kept.push(note);
    this.write();
    return this.send();
  }

  write = () => localStorage.setItem(this.key, JSON.stringify(this.kept));

  // Age on the steady clock; after a reload only the wall clock remembers, less surely. In milliseconds of the run.
  age_ms(note) {
    const gone = note.reloaded ? tick.wall() - note.wall : tick.now() - note.ms;
    return Math.max(0, Math.round(gone * this.pace() + note.ago_s * 1000));
  }

  async send() {
    if (this.sending || !this.kept.length) return;
    this.sending = true;
    this.sent_ms = tick.now();
    const sent = [...this.kept];
    try {
      const { answers, screen, trouble } = await this.post(sent);
      for (const answer of answers) this.answered(sent.find((note) => note.id === answer.id), answer);
      this.onTouch(true, screen, trouble);
    } catch {
      this.tried = true;
      this.onTouch(false);
    }
    this.sending = false;
    if (this.kept.some((note) => !sent.includes(note))) await this.send();
  }

  // What got no answer is tried again.
  again(after_ms) {
    if (this.kept.length && tick.now() - this.sent_ms >= after_ms) this.send();
  }

  async post(sent) {
    const body = sent.map((note) => ({
      id: note.id,
      asked: note.asked,
      age_ms: this.age_ms(note),
      within_s: (note.reloaded ? 5 : 1) + (note.ago_s ? 3 : 0),
      how: note.reloaded || this.tried ? "queued" : note.how,
      saw_seq: note.saw_seq,
      device: this.device,
    }));
    const answer = await fetch(this.address, {
      method: "POST",
      headers: { "content-type": "application/json", accept: "application/json" },
      body: JSON.stringify(body),
    });
    if (!answer.ok) throw new Error(`answered ${answer.status}`);
    this.tried = false;
    return answer.json();
  }

  answered(note, answer) {
    if (!note) return;
    this.kept = this.kept.filter((one) => one !== note);
    this.write();
    this.onAnswer(note, answer);
  }
}
