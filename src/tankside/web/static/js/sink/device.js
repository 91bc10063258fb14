// The name of this device, and the number of its next note: together the id of a command, for ever.
const DEVICE = "tankside-device";
export function device() {
  const kept = localStorage.getItem(DEVICE);
  if (kept) return kept;
  const letters = [...crypto.getRandomValues(new Uint8Array(6))].map((byte) => (byte % 36).toString(36)).join("");
  localStorage.setItem(DEVICE, letters);
  return letters;
}


export function nextNumber() {
  const n = Number(localStorage.getItem(`${DEVICE}-n`) ?? 0) + 1;
  localStorage.setItem(`${DEVICE}-n`, n);
  return n;
}
