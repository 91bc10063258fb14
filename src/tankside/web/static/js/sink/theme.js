// The theme of this device, changed without leaving the page; the server keeps it in its cookie.
import { to } from "../address.js";

const BRIGHT = "tankside-brighter";

export function listenToThemes() {
  const root = document.documentElement, choices = [...document.querySelectorAll("[data-theme-choice]")];
  for (const choice of choices) {
    choice.addEventListener("click", () => {
      const name = choice.dataset.themeChoice;
      if (name === "device") delete root.dataset.theme;
      else root.dataset.theme = name;
      for (const one of choices) one.setAttribute("aria-pressed", String(one === choice));
      fetch(to("/settings/theme"), { method: "POST", body: new URLSearchParams({ theme: name }), redirect: "manual" }).catch(() => {});
    });
  }
  const brighter = document.getElementById("brighter");
  const show = () => {
    const on = localStorage.getItem(BRIGHT) === "yes";
    root.dataset.bright = String(on);
    brighter.setAttribute("aria-pressed", String(on));
  };
  brighter.addEventListener("click", () => {
    localStorage.setItem(BRIGHT, localStorage.getItem(BRIGHT) === "yes" ? "no" : "yes");
    show();
  });
  show();
}
