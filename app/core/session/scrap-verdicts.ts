import { minuteMs } from '../limits.ts';
import type { Part } from '../paint/mix.ts';
import type { Mix } from '../plan/plan.ts';
import type { PastSession } from './drying-history.ts';
import { ghostTapMs, orderEvents } from './fold-session.ts';
import { elapsedMs, type SessionEvent } from './session-event.ts';

/** How a puddle brushed on a scrap dried, against what it is to dry to. */
export type ScrapVerdict = 'weaker' | 'right' | 'stronger';

/** One puddle at one strength, as mixed. */
interface ScrapPuddle {
  readonly parts: readonly Part[];
  readonly load: number;
}

/** A puddle and how its scraps came out, first to last; the first is the mix as it was planned. */
interface ComparedPuddle extends ScrapPuddle {
  readonly tries: readonly ScrapVerdict[];
}

/** Sooner after the one before a scrap can't have dried: she corrects herself (own). */
const sameScrapMs = minuteMs;

/** Loads no further apart than this, as a ratio, are the same strength to a painter (own). */
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
  for (const event of orderEvents(events)) {
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

const beganAt = ({ events }: PastSession): number => events[0]?.wallMs ?? 0;

/** Every puddle compared in past sessions, latest session first. */
export const scrapLessons = (sessions: readonly PastSession[]): ComparedPuddle[] =>
  [...sessions]
    .sort((one, other) => beganAt(other) - beganAt(one))
    .flatMap(({ events }) => comparedPuddles(events));

/** What the same puddle did last time, when first mixed by the plan; null where it is new, or was right. */
export function lastTimeWords(
  lessons: readonly ComparedPuddle[],
  puddle: ScrapPuddle,
): string | null {
  const first = lessons.find((each) => isSamePuddle(each, puddle))?.tries[0];
  if (first === 'weaker') return 'Last time it came out weaker: take more paint.';
  if (first === 'stronger') return 'Last time it came out stronger: take more water.';
  return null;
}

/** A puddle to brush on a scrap: at its strongest use. */
interface PuddleToCompare extends ScrapPuddle {
  readonly name: string;
  readonly mix: Mix;
}

/** The puddles some rows are painted from, each once, in the order of the rows. */
export function scrapPuddles(mixes: readonly Mix[]): PuddleToCompare[] {
  const strongest = new Map<string, Mix>();
  for (const mix of mixes) {
    if (mix.puddle === null || mix.load <= 0) continue;
    const before = strongest.get(mix.puddle);
    if (!before || mix.load > before.load) strongest.set(mix.puddle, mix);
  }
  return [...strongest].map(([name, mix]) => ({ name, mix, parts: mix.parts, load: mix.load }));
}

/** How a puddle came out on the scrap, to follow its words: '; on the scrap weaker, then right'; '' where it was not compared. */
export function scrapInWords(compared: readonly ComparedPuddle[], puddle: ScrapPuddle): string {
  const tries = compared.find((each) => isSamePuddle(each, puddle))?.tries ?? [];
  return tries.length > 0 ? `; on the scrap ${tries.join(', then ')}` : '';
}
