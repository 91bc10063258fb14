// Putting right an earlier note: a little earlier, a little later, or not at all.
import { choice } from "./choice.js";
import { clockWords } from "./words.js";

export function fillNotes({ page }) {
  const { notes, zone, phrases } = page.screen;
  const rows = notes.map((note) => {
    const row = document.createElement("li"), words = document.createElement("p");
    words.textContent = `${clockWords(note.at_us, zone, true)} ${note.words}`;
    row.append(words, choice(phrases["right-earlier"], "", { later: note.about, by: 10 }), choice(phrases["right-later"], "", { later: note.about, by: -10 }), choice(phrases["right-not"], "", { withdraw: note.about }));
    return row;
  });
  document.getElementById("right-notes").replaceChildren(...rows);
}
