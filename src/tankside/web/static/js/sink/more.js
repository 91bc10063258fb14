// More: notes, cues, themes, the other tankfuls, and leaving by a held press.
import { to } from "../address.js";
import { onHold } from "./hold.js";
import { canStayAwake } from "./awake.js";
import { listenToDip } from "./dip.js";
import { switchWay, ways } from "./cues/cues.js";
import { soundAt, wakeSound } from "./cues/tone.js";
import { choice } from "./choice.js";
import { notesEach, switchEach } from "./each.js";
import { listenToThemes } from "./theme.js";
import { fill } from "./words.js";

const get = (id) => document.getElementById(id);

export function listenToMore(sheets) {
  const { page } = sheets;
  listenToDip(page);
  listenToThemes();
  for (const way of document.querySelectorAll("[data-cue]")) {
    way.setAttribute("aria-pressed", String(ways[way.dataset.cue]));
    way.addEventListener("click", () => way.setAttribute("aria-pressed", String(switchWay(way.dataset.cue))));
  }
  const each = get("note-each");
  each.setAttribute("aria-pressed", String(notesEach()));
  each.addEventListener("click", () => {
    each.setAttribute("aria-pressed", String(switchEach()));
    page.onChange();
  });
  get("sound-check").addEventListener("click", () => {
    wakeSound();
    soundAt(0);
  });
  get("note-form").addEventListener("submit", (event) => {
    event.preventDefault();
    const field = get("note-text");
    if (field.value.trim()) sheets.close(page.ask({ kind: "write-note", text: field.value.trim(), tankful: page.view.letter }));
    field.value = "";
  });
  onHold(get("leave"), () => location.assign(to("/")));
  get("awake-words").textContent = page.screen.phrases[canStayAwake() ? "screen-stays-on" : "no-wake-lock"];
}

// The other tankfuls, one press each; what the server must agree to is off while it is out of touch.
export function fillTanks({ page }) {
  const others = page.screen.tankfuls.filter((one) => one.letter !== page.view.letter);
  get("more-tanks").replaceChildren(
    ...others.map((one) => choice(fill(page.screen.phrases.tankful, { letter: one.letter }), one.tank, { tankful: one.letter })),
  );
  for (const request of document.querySelectorAll("[data-request]")) request.disabled = !page.inTouch;
}
