// Refusals, warnings and plain facts, in place between the vessel and the acts.
const KINDS = { refusal: "plate plate-refusal", warning: "plate plate-warning", fact: "plate" };

export function showNotices(place, notices, onWay) {
  const key = JSON.stringify(notices);
  if (place.dataset.shown === key) return;
  place.dataset.shown = key;
  place.replaceChildren(...notices.map((notice) => plate(notice, onWay)));
}

function plate(notice, onWay) {
  const made = document.createElement("div");
  made.className = KINDS[notice.kind];
  if (notice.heading) made.append(part("h2", notice.heading));
  const sentence = part("p", notice.sentence);
  sentence.addEventListener("click", () => made.classList.toggle("whole")); // shows what a low screen has cut
  made.append(sentence);
  for (const way of notice.ways ?? []) {
    const button = part("button", way.words);
    button.type = "button";
    button.className = "sink-other";
    button.addEventListener("click", () => onWay(way, notice));
    made.append(button);
  }
  return made;
}

function part(tag, words) {
  const made = document.createElement(tag);
  made.textContent = words;
  return made;
}
