// Keeps the screen on where the browser can; says what to do where it cannot.
let lock = null;

export const canStayAwake = () => "wakeLock" in navigator;

export async function stayAwake() {
  if (!canStayAwake() || lock || document.visibilityState !== "visible") return;
  try {
    lock = await navigator.wakeLock.request("screen");
    lock.addEventListener("release", () => (lock = null));
  } catch {
    lock = null;
  }
}
