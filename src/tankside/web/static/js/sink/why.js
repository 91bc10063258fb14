// Why the bath in the tank is as long as it is: offered on the surface and under More, said in a sheet.
import { to } from "../address.js";
import { say } from "./words.js";

const get = (id) => document.getElementById(id);

export function offerWhy({ tankful, shape }) {
  for (const id of ["why", "more-why"]) {
    say(get(id), tankful.why?.heading ?? "");
    get(id).hidden = !tankful.why || (id === "why" && shape !== "vessel");
  }
  get("more-working").href = to(tankful.working);
}

export function fillWhy({ page }) {
  const { heading, sentences, page: working } = page.view.tankful.why;
  say(get("heading-why"), heading);
  get("why-page").href = to(working);
  get("why-sentences").replaceChildren(
    ...sentences.map((sentence) => {
      const made = document.createElement("li");
      made.textContent = sentence;
      return made;
    }),
  );
}
