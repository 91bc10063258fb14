// Walks the script of a run: what stands now and what comes next, from offsets and anchors alone.
const S = 1e6;

export class Script {
  constructor(screen) {
    this.screen = screen;
    this.noted = new Map();
    this.index = new Map(screen.acts.map((act, at) => [act.id, at]));
  }

  // An anchor that this device noted and the server may not have heard of yet.
  note(anchor, us) {
    this.noted.set(anchor, us);
  }

  anchor(name) {
    return this.screen.anchors[name] ?? this.noted.get(name);
  }

  tankful(letter) {
    return this.screen.tankfuls.find((one) => one.letter === letter);
  }

  // The bath in the tank: poured, and not ended by anything.
  bath(letter) {
    return this.tankful(letter).baths.findLast(
      (bath) => this.anchor(bath.begins) !== undefined && bath.ends.every((end) => this.anchor(end) === undefined),
    );
  }

  acts(letter) {
    return this.screen.acts.filter((act) => act.tankful === letter);
  }

  // When an act is due, undefined while what it counts from has not happened.
  due(act) {
    const from = this.anchor(act.anchor);
    return from === undefined ? undefined : from + act.after_s * S;
  }

  // Acts of a tankful that can still be noted, in order: those after the last that was, and what is not yet moot.
  coming(letter) {
    const own = this.acts(letter).filter((act) => act.sets), done = (act) => this.anchor(act.sets) !== undefined;
    const last = own.findLastIndex((act) => !act.until && done(act));
    return own.filter((act, at) => !done(act) && (act.until ? this.anchor(act.until) === undefined : at > last));
  }

  // The next act to note: the first that is open now; requests only while the server answers.
  main(letter, us, inTouch) {
    return this.coming(letter).find((act) => this.open(act, us) && (inTouch || !act.asks));
  }

  // Closing binds only while a bath is in the tank: an empty one waits for nothing else.
  open(act, us) {
    if (act.opens_s === null) return true;
    const from = this.anchor(act.anchor);
    if (from === undefined) return false;
    const since = (us - from) / S, free = this.bath(act.tankful) === undefined;
    return since >= act.opens_s && (free || act.closes_s === null || since < act.closes_s);
  }

  // Everything that still wants hands, over all tankfuls, by time.
  ahead(us) {
    const found = [];
    for (const { letter } of this.screen.tankfuls) {
      const coming = new Set(this.coming(letter));
      for (const act of this.acts(letter)) {
        const due = this.due(act);
        if (due === undefined || !this.lives(act, letter)) continue;
        if (act.sets ? coming.has(act) : due > us) found.push({ act, due });
      }
    }
    return found.sort((one, other) => one.due - other.due);
  }

  // An act that nobody notes is called for only while the bath that it counts from is in the tank.
  lives(act, letter) {
    return Boolean(act.sets) || this.bath(letter)?.begins === act.anchor;
  }
}
