import type { Part } from '../part.ts';
import { elapsedMs } from './elapsed-ms.ts';
import { inOrder } from './fold-session.ts';
import { ghostTapMs } from './ghost-tap.ts';
import type { SessionEvent } from './session-event.ts';

/** How a puddle brushed on a scrap dried, against what it is to dry to. */
export type ScrapVerdict = 'weaker' | 'right' | 'stronger';

/** One puddle at one strength, as mixed. */
export interface ScrapPuddle {
  readonly parts: readonly Part[];
  readonly load: number;
}

/** A puddle and how its scraps came out, first to last; the first is the mix as it was planned. */
export interface ComparedPuddle extends ScrapPuddle {
  readonly tries: readonly ScrapVerdict[];
}

/** Sooner after the one before a scrap can't have dried: she corrects herself (own figure). */
const sameScrapMs = 60_000;

/** Loads no further apart than this, as a ratio, are the same strength to a painter (own figure). */
const sameStrength = 1.2;

const ratioOf = (parts: readonly Part[]): string => {
  const all = parts.reduce((sum, part) => sum + part.parts, 0);
  return parts
    .map(({ paint, parts: n }) => `${paint} ${(n / all).toFixed(4)}`)
    .sort()
    .join(', ');
};

/** Same paints in the same proportions at about the same strength. */
export const isSamePuddle = (one: ScrapPuddle, other: ScrapPuddle): boolean =>
  ratioOf(one.parts) === ratioOf(other.parts) &&
  Math.abs(Math.log(one.load / other.load)) <= Math.log(sameStrength);

interface Try {
  readonly verdict: ScrapVerdict;
  readonly atMs: number;
}

/**
 * The puddles compared in a session's log, in order of their first scrap. A verdict taken back counts no more; one
 * told again at once replaces the one before; `null` in the log is the last of them withdrawn.
 */
export function comparedPuddles(events: readonly SessionEvent[]): ComparedPuddle[] {
  const found: { puddle: ScrapPuddle; tries: Try[]; lastMs: number }[] = [];
  let atMs = 0;
  let before: SessionEvent | null = null;
  for (const event of inOrder(events)) {
    atMs += before ? elapsedMs(before, event) : 0;
    before = event;
    const { what } = event;
    if (what.kind !== 'scrap') continue;
    let known = found.find(({ puddle }) => isSamePuddle(puddle, what));
    if (known && atMs - known.lastMs < ghostTapMs) continue;
    if (!known) {
      known = { puddle: { parts: what.parts, load: what.load }, tries: [], lastMs: atMs };
      found.push(known);
    }
    known.lastMs = atMs;
    const last = known.tries.at(-1);
    const replaces = what.verdict === null || (last && atMs - last.atMs < sameScrapMs);
    known.tries = [
      ...(replaces ? known.tries.slice(0, -1) : known.tries),
      ...(what.verdict === null ? [] : [{ verdict: what.verdict, atMs }]),
    ];
  }
  return found
    .filter(({ tries }) => tries.length > 0)
    .map(({ puddle, tries }) => ({ ...puddle, tries: tries.map(({ verdict }) => verdict) }));
}

/** How a puddle's last scrap came out; null where it was not compared. */
export const verdictOf = (
  compared: readonly ComparedPuddle[],
  puddle: ScrapPuddle,
): ScrapVerdict | null =>
  compared.findLast((each) => isSamePuddle(each, puddle))?.tries.at(-1) ?? null;
