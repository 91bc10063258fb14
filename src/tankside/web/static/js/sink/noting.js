// What a person does on the page: noting acts, asking for what the server must agree to.
import { reading } from "./dip.js";
import { asNoted } from "./each.js";
import { Telling } from "./telling.js";
import { tick } from "./tick.js";

export class Noting extends Telling {
  press(id, held) {
    const act = asNoted(this.screen.acts.find((one) => one.id === id));
    if (act) this.note(act, held ? { held: true } : {});
  }

  noteMain({ ago_s = 0, ...altered }) {
    return this.note(this.view.main, altered, ago_s);
  }

  note(act, altered, ago_s = 0) {
    if (act.asks && !this.inTouch) return this.tell("requests-off");
    const at_us = Math.round(this.clock.us() - ago_s * 1e6);
    this.opened = undefined;
    this.said = undefined;
    this.away = undefined;
    if (act.sets && !act.asks) this.script.note(act.sets, at_us);
    this.queue.add({ ...act.command, ...altered }, { ago_s, saw_seq: this.screen.seq, sets: act.asks ? "" : act.sets, at_us });
    this.onChange();
    return true;
  }

  ask(asked, { said = "" } = {}) {
    this.queue.add(asked, { saw_seq: this.screen.seq, at_us: Math.round(this.clock.us()) });
    if (said) this.told = { words: said, ms: tick.now() };
    this.onChange();
    return true;
  }

  dip() {
    return this.ask({ kind: "take-reading", of: "tank", which: this.view.letter, raw_c: reading() });
  }

  skip(why) {
    if (!this.inTouch) return this.tell("requests-off");
    return this.ask({ kind: "skip-bath", bath: this.view.tankful.next_bath, why });
  }

  retime(about, by_s) {
    const note = this.screen.notes.find((one) => one.about === about);
    return this.ask({ kind: "retime-note", about, happened_age_s: (this.clock.us() - note.at_us) / 1e6 + by_s });
  }

  answered(note, answer) {
    if (answer.refusal) {
      if (note.sets) this.script.noted.delete(note.sets);
      this.said = { notice: answer.refusal, note };
    } else if (answer.said) this.told = { words: answer.said, ms: tick.now() };
  }

  // Another tankful by hand, until the next cue calls.
  show(letter) {
    const next = this.script.ahead(this.view.us).find(({ due }) => due > this.view.us);
    this.shown = { letter, until: next?.due ?? Infinity };
    this.onChange();
  }

  openAct(id) {
    if (!id) return;
    this.opened = id;
    this.onChange();
  }
}
