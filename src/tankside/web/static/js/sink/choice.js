// One choice of a sheet: a button with a heading and words.
export function choice(heading, words, data, wanted = false) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = wanted ? "sink-other wanted" : "sink-other";
  Object.assign(made.dataset, data);
  const first = document.createElement("b");
  first.textContent = heading;
  made.append(first);
  if (words) made.append(" ", words);
  return made;
}
