import type { EdgeKind } from '../../../app/model/edge.ts';

/** Samples from .. to - 1 of one kind; in a closed contour `to` may run past its end. */
export interface EdgeRun {
  readonly kind: EdgeKind;
  readonly from: number;
  readonly to: number;
  readonly lengthPx: number;
}

/** Neighbouring samples of one kind, in order; where it is closed, from the first change on. */
function rawRuns(kinds: readonly EdgeKind[], lengths: Float32Array, closed: boolean): EdgeRun[] {
  const count = kinds.length;
  const change = kinds.findIndex((kind, n) => kind !== kinds[(n + count - 1) % count]);
  const start = closed && change > 0 ? change : 0;
  const runs: EdgeRun[] = [];
  for (let from = start; from < start + count; ) {
    const kind = kinds[from % count] as EdgeKind;
    let lengthPx = 0;
    let to = from;
    for (; to < start + count && kinds[to % count] === kind; to++) {
      lengthPx += lengths[to % count] as number;
    }
    runs.push({ kind, from, to, lengthPx });
    from = to;
  }
  return runs;
}

const joined = (one: EdgeRun, other: EdgeRun, kind: EdgeKind): EdgeRun => ({
  kind,
  from: one.from,
  to: other.to,
  lengthPx: one.lengthPx + other.lengthPx,
});

/**
 * Runs of one kind along a contour, none shorter than `leastPx` unless it is all there is: the
 * shortest is given to the longer of its neighbours until that is so.
 */
export function edgeRuns(
  kinds: readonly EdgeKind[],
  lengths: Float32Array,
  closed: boolean,
  leastPx: number,
): EdgeRun[] {
  const runs = rawRuns(kinds, lengths, closed);
  while (runs.length > 1) {
    let shortest = 0;
    for (const [n, run] of runs.entries()) {
      if (run.lengthPx < (runs[shortest] as EdgeRun).lengthPx) shortest = n;
    }
    const run = runs[shortest] as EdgeRun;
    if (run.lengthPx >= leastPx) break;
    const before = runs[shortest - 1];
    const after = runs[shortest + 1];
    const kind = ((before?.lengthPx ?? -1) >= (after?.lengthPx ?? -1) ? before : after)?.kind;
    if (!kind) break;
    // Both neighbours may be of that kind: then all three become one.
    let first = shortest;
    let last = shortest;
    if (before?.kind === kind) first--;
    if (after?.kind === kind) last++;
    const all = runs.slice(first, last + 1).reduce((one, other) => joined(one, other, kind));
    runs.splice(first, last - first + 1, { ...all, kind });
  }
  return runs;
}
