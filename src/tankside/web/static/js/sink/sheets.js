// The sheets that the others open; each notes through `page.note` and closes.
import { choice } from "./choice.js";
import { openDip } from "./dip.js";
import { fillTanks, listenToMore } from "./more.js";
import { fillNotes } from "./right.js";
import { fillWhy } from "./why.js";

const get = (id) => document.getElementById(id);

export class Sheets {
  constructor(page) {
    this.page = page;
    for (const close of document.querySelectorAll("[data-close]")) close.addEventListener("click", () => close.closest("dialog").close());
    document.addEventListener("click", (event) => this.listen(event));
    this.typed("earlier", (words) => this.ago(Number(words.replace(",", "."))));
    this.typed("scan", (words) => this.hand(words.trim().toUpperCase()));
    this.typed("skip", (words) => words.trim() && this.close(this.page.skip(words.trim())));
    get("dip-note").addEventListener("click", () => this.close(page.dip()));
    listenToMore(this);
  }

  // A form with one field: `use` answers false where the words cannot be read, and the field says so.
  typed(name, use) {
    get(`${name}-form`).addEventListener("submit", (event) => {
      event.preventDefault();
      const field = event.target.querySelector("input"), refusal = get(`${name}-refusal`);
      if (use(field.value)) return (field.value = ""), (refusal.textContent = "");
      refusal.textContent = this.page.screen.phrases[`refused-${name}`];
      return field.focus();
    });
  }

  open(name) {
    for (const open of document.querySelectorAll("dialog[open]")) open.close();
    const fill = { dip: openDip, earlier: ({ page }) => (get("earlier-what").textContent = page.view.main?.button ?? ""), bottle: (sheets) => sheets.fillBottles(), right: fillNotes, why: fillWhy, skip: ({ page }) => (get("skip-what").textContent = page.view.tankful.next_words), more: fillTanks }[name];
    fill?.(this);
    get(`sheet-${name}`).showModal();
  }

  close(done = true) {
    if (done !== false) for (const open of document.querySelectorAll("dialog[open]")) open.close();
    return done !== false;
  }

  listen({ target }) {
    const button = target.closest?.("[data-sheet], [data-ago], [data-bottle], [data-withdraw], [data-later], [data-tankful]");
    if (!button) return;
    const { sheet, ago, bottle, withdraw, later, tankful } = button.dataset;
    if (sheet) this.open(sheet);
    else if (ago) this.ago(Number(ago));
    else if (bottle) this.hand(bottle);
    else if (withdraw) this.close(this.page.ask({ kind: "withdraw-note", about: withdraw }));
    else if (later) this.close(this.page.retime(later, Number(button.dataset.by)));
    else if (tankful) this.close(this.page.show(tankful));
  }

  ago(seconds) {
    if (!(seconds >= 0 && seconds <= 7200) || !this.page.view.main) return false;
    return this.close(this.page.noteMain({ ago_s: seconds }));
  }

  fillBottles() {
    const { bench } = this.page.screen, wanted = this.page.view.main?.guard?.code;
    get("bottle-choices").replaceChildren(
      ...bench.map((one) => choice(one.code, `${one.name}, ${one.cap}`, { bottle: one.code }, one.code === wanted)),
    );
  }

  hand(code) {
    const known = this.page.screen.bench.find((one) => one.code === code);
    if (!known) return false;
    return this.close(this.page.noteMain({ bottle: code }));
  }

  skip(why) {
    return this.close(this.page.skip(why));
  }
}
