// The next act, large: when, what, and its pictogram.
import { elbow } from "./leaders.js";
import { pictogram } from "./pictograms.js";
import { fit, group, path, text } from "./svg.js";

// `mark` is where its ring stands, null where it has none on this scale.
export function drawNextAct(svg, next, { size, width, grow }, middle, mark = null) {
  if (!next) return;
  const x = size.words, icon = grow > 1 ? 52 : 36;
  const words = x + icon + (grow > 1 ? 18 : 10);
  const when = text(words, middle - (grow > 1 ? 16 : 12), next.when, { class: "next-when" });
  const what = text(words, middle + (grow > 1 ? 30 : 20), next.title, { class: "next-what" });
  const ring = (next.other ? size.otherRing : size.ring) + size.radius;
  svg.append(
    group(
      "next",
      mark !== null && path(elbow(ring, mark, x - 8, middle), { class: "leader" }),
      pictogram(next.pictogram, x, middle - icon / 2, icon),
      when,
      what,
    ),
  );
  fit(when, width - words - 8, grow > 1 ? 28 : 20);
  fit(what, width - words - 8, grow > 1 ? 46 : 32, 15);
}
