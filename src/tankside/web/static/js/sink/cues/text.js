// A polite region speaks each cue once.
export function showText(words) {
  const spoken = document.getElementById("spoken");
  spoken.textContent = "";
  spoken.textContent = words;
}
