// A reading along a curve: a line from scale to curve to scale, moved by arrow keys or a finger, and said aloud.
// Without this script the tables say the same.
const said = (value, places = 2) => value.toFixed(places).replace("-", "\u2212");

class CurveReading extends HTMLElement {
  connectedCallback() {
    this.points = JSON.parse(this.dataset.points);
    this.slider = this.querySelector("input");
    this.words = this.querySelector("output");
    this.slider.max = String(this.points.length - 1);
    this.slider.value = String(Math.floor(this.points.length * 0.75));
    this.slider.addEventListener("input", () => this.read());
    this.hidden = false;
    this.read();
  }

  read() {
    const [logH, density, half] = this.points[Number(this.slider.value)];
    const words = `log exposure ${said(logH)}: ${said(density)} ± ${said(half)} above base and fog`;
    this.words.textContent = words;
    this.slider.setAttribute("aria-valuetext", words);
    for (const line of document.querySelectorAll("[data-reading]")) {
      const { left, right, top, bottom, low, high, most } = line.dataset;
      const x = Number(left) + ((logH - low) / (high - low)) * (right - left);
      const y = Number(bottom) - (density / most) * (bottom - top);
      line.setAttribute("d", `M${line.dataset.scale} ${y.toFixed(1)}H${x.toFixed(1)}V${bottom}`);
    }
  }
}

customElements.define("curve-reading", CurveReading);
