// The two clocks of the device and its tick. A test puts its own under globalThis.sinkTick before the page runs.
const TICK_MS = 200;

function worker(step) {
  // A Worker goes on ticking in a hidden tab, where the page's own timers fall silent.
  try {
    const ticking = new Worker(new URL("./ticking.js", import.meta.url));
    ticking.onmessage = step;
    ticking.postMessage(TICK_MS);
  } catch {
    setInterval(step, TICK_MS);
  }
}

const machine = {
  now: () => performance.now(),
  wall: () => Date.now(),
  every: (step) => worker(step),
  after: (ms, step) => {
    const timer = setTimeout(step, ms);
    return () => clearTimeout(timer);
  },
};

export const tick = globalThis.sinkTick ?? machine;
