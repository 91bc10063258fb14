// Figures into the sentences that the server gave.
export const minutes = (s) => {
  const whole = Math.max(0, Math.round(s));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
};

// Under a minute a number of seconds is read faster than minutes.
export const span = (s) => (Math.round(s) < 60 ? `${Math.max(0, Math.round(s))} s` : minutes(s));

export const fill = (phrase, figures = {}) =>
  phrase.replace(/\{(\w+)\}/g, (whole, name) => (name in figures ? figures[name] : whole));

export function clockWords(us, zone, seconds = false) {
  const parts = { hour: "2-digit", minute: "2-digit", hourCycle: "h23", timeZone: zone };
  if (seconds) parts.second = "2-digit";
  return new Intl.DateTimeFormat("en-GB", parts).format(new Date(us / 1000));
}

// Changes text only where it differs, so that a screen reader is not told the same twice.
export function say(element, text) {
  if (element && element.textContent !== text) element.textContent = text;
}
