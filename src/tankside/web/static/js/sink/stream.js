// News of the run as they come; one stream, closed when the page is left, so that no connection is held.
export class Stream {
  constructor(address, { onScreen, onTouch }) {
    Object.assign(this, { address, onScreen, onTouch });
    addEventListener("pagehide", () => this.close());
    addEventListener("pageshow", (event) => event.persisted && this.open());
    this.open();
  }

  open() {
    this.close();
    this.source = new EventSource(this.address);
    this.source.addEventListener("screen", (event) => {
      this.onTouch(true);
      this.onScreen(JSON.parse(event.data));
    });
    this.source.onopen = () => this.onTouch(true);
    this.source.onerror = () => this.onTouch(false);
  }

  close() {
    this.source?.close();
    this.source = null;
  }
}
