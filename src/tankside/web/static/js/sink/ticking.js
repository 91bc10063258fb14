// Ticks for a page that may be hidden.
onmessage = ({ data }) => setInterval(() => postMessage(0), data);
