// Words beside a scale, pushed apart as little as will do: the same law as web/drawing/leaders.py.
import { round } from "./svg.js";

// wishes: [{at, height, rank}] in order of `at`; answers the centre of each, null where there is no room.
export function spread(wishes, top, bottom) {
  const kept = wishes.map((_, at) => at);
  while (kept.length) {
    const chosen = kept.map((at) => wishes[at]);
    if (chosen.reduce((sum, one) => sum + one.height, 0) <= bottom - top) {
      const centres = leastShift(chosen, top, bottom);
      return wishes.map((_, at) => centres[kept.indexOf(at)] ?? null);
    }
    kept.splice(lowest(chosen), 1);
  }
  return wishes.map(() => null);
}

function lowest(chosen) {
  let found = chosen.length - 1;
  for (let at = found; at >= 0; at--) if (chosen[at].rank < chosen[found].rank) found = at;
  return found;
}

// Taking off the heights above turns 'do not overlap' into 'do not decrease'; pooled neighbours share a mean.
function leastShift(wishes, top, bottom) {
  let before = 0;
  const above = wishes.map((one) => {
    const middle = before + one.height / 2;
    before += one.height;
    return middle;
  });
  const blocks = [];
  wishes.forEach((one, at) => {
    let block = { start: one.at - above[at], size: 1 };
    while (blocks.length && blocks.at(-1).start >= block.start) {
      const last = blocks.pop();
      const size = last.size + block.size;
      block = { start: (last.start * last.size + block.start * block.size) / size, size };
    }
    blocks.push(block);
  });
  const starts = blocks.flatMap((block) => Array(block.size).fill(block.start));
  return starts.map((start, at) => Math.min(Math.max(start, top), bottom - before) + above[at]);
}

// Out of the mark, slanted, and level into the words.
export function elbow(from_x, from_y, to_x, to_y, run = 8) {
  if (Math.abs(from_y - to_y) < 0.5) return `M${round(from_x)} ${round(from_y)}H${round(to_x)}`;
  const out = Math.min(run, Math.abs(to_x - from_x) / 3);
  return `M${round(from_x)} ${round(from_y)}h${round(out)}L${round(to_x - out)} ${round(to_y)}H${round(to_x)}`;
}
