// The thermometer: large minus and plus around the last reading, in the person's own degrees.
const get = (id) => document.getElementById(id);
const shown = (c, fahrenheit) => (fahrenheit ? c * 1.8 + 32 : c);
let raw_c = 20;

export function openDip({ page }) {
  raw_c = page.view.tankful.tank_c ?? 20;
  show(page.screen.fahrenheit);
}

function show(fahrenheit) {
  get("dip-value").textContent = `${shown(raw_c, fahrenheit).toFixed(1)} °${fahrenheit ? "F" : "C"}`;
}

export function listenToDip(page) {
  for (const button of document.querySelectorAll("[data-step]")) {
    button.addEventListener("click", () => {
      const step = Number(button.dataset.step) / (page.screen.fahrenheit ? 1.8 : 1);
      raw_c = Math.min(100, Math.max(0, raw_c + step));
      show(page.screen.fahrenheit);
    });
  }
}

export const reading = () => Math.round(raw_c * 100) / 100;
