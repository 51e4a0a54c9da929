import { minuteMs } from '../limits.ts';
import type { LaidMix, Part } from '../paint/mix.ts';
import type { ScrapVerdict } from '../paint/paint-at-fault.ts';
import type { Mix } from '../plan/plan.ts';
import type { PastSession } from './drying-history.ts';
import { ghostTapMs, orderEvents } from './fold-session.ts';
import { elapsedMs, type SessionEvent } from './session-event.ts';

/** How one scrap came out, and the line of the log that says so, with its time on the wall, ms since 1970. */
interface ScrapTry extends ScrapVerdict {
  readonly event: string;
  readonly at: number;
}

/** A puddle and how its scraps came out, first to last; the first is the mix as it was planned. */
export interface ComparedPuddle extends LaidMix {
  readonly tries: readonly ScrapTry[];
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
export const isSamePuddle = (one: LaidMix, other: LaidMix): boolean =>
  ratioOf(one.parts) === ratioOf(other.parts) &&
  Math.abs(Math.log(one.load / other.load)) <= Math.log(sameStrength);

/**
 * The puddles compared in a session's log, in order of their first scrap. A verdict taken back counts no more; one
 * told again at once replaces the one before; an empty one in the log is the last of them withdrawn.
 */
export function comparedPuddles(events: readonly SessionEvent[]): ComparedPuddle[] {
  const found: { puddle: LaidMix; tries: (ScrapTry & { atMs: number })[]; lastMs: number }[] = [];
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
    const { verdict: depth, hue = null } = what;
    const withdrawn = depth === null && hue === null;
    const replaces = withdrawn || (last && atMs - last.atMs < sameScrapMs);
    known.tries = [
      ...(replaces ? known.tries.slice(0, -1) : known.tries),
      ...(withdrawn ? [] : [{ depth, hue, event: event.id, at: event.wallMs, atMs }]),
    ];
  }
  return found
    .filter(({ tries }) => tries.length > 0)
    .map(({ puddle, tries }) => ({ ...puddle, tries: tries.map(({ atMs: _, ...each }) => each) }));
}

/** How a puddle's last scrap came out; null where it was not compared. */
export const verdictOf = (
  compared: readonly ComparedPuddle[],
  puddle: LaidMix,
): ScrapVerdict | null =>
  compared.findLast((each) => isSamePuddle(each, puddle))?.tries.at(-1) ?? null;

/**
 * The scrap of a puddle that tells of the strength of its paints; null where none does. Of a mix it is the first
 * whose hue is off: water alone changes none. Of a paint by itself it is the first, if too pale or too strong. After
 * that she has changed the mix.
 */
export function tellingTry({ parts, tries }: ComparedPuddle): ScrapTry | null {
  if (parts.length > 1) return tries.find(({ hue }) => hue !== null) ?? null;
  const [first] = tries;
  return first?.depth && first.depth !== 'right' ? first : null;
}

const beganAt = ({ events }: PastSession): number => events[0]?.wallMs ?? 0;

/** Every puddle compared in past sessions, latest session first. */
export const scrapLessons = (sessions: readonly PastSession[]): ComparedPuddle[] =>
  [...sessions]
    .sort((one, other) => beganAt(other) - beganAt(one))
    .flatMap(({ events }) => comparedPuddles(events));

/** A puddle to brush on a scrap: at its strongest use. */
interface PuddleToCompare extends LaidMix {
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
