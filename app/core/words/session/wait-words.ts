import { minuteMs } from '../../limits.ts';
import type { DryingLeft } from '../../session/easel-time.ts';
import { timeInWords } from '../dates.ts';
import { hoursInWords } from '../minutes.ts';

/** A wait as it is told: one figure leads. */
export interface WaitWords {
  /** What the figure is: 'Bone dry in about'. */
  readonly name: string;
  /** '50 min'; 'over by 6 min' once the latest end is passed. */
  readonly lead: string;
  /** When to look: 'Look from 30 min on.' */
  readonly look: string;
  /** From the earliest to the latest, as clocks show it: '30:00 to 1:17:00, from 12:30 to 13:17'. */
  readonly range: string;
}

/** Past two days, and past two hours, nobody counts the minutes. */
export function timeOver(ms: number): string {
  const minutes = Math.floor(ms / minuteMs);
  const hours = Math.floor(minutes / 60);
  if (hours >= 48) return `over by ${Math.floor(hours / 24)} days`;
  if (hours >= 2) return `over by ${hours} h`;
  return minutes < 1 ? 'just over' : `over by ${minutes} min`;
}

const pad = (n: number): string => String(n).padStart(2, '0');

/** '7:30', '1:17:00': milliseconds as a clock shows them, rounded up to the second. */
export function clockFace(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours
    ? `${hours}:${pad(minutes)}:${pad(seconds % 60)}`
    : `${minutes}:${pad(seconds % 60)}`;
}

/** Whole minutes, never too few: who sets a timer by them does not look too early. */
export const minutesUp = (ms: number): number => Math.ceil(ms / minuteMs);

/** A drying wait from now on; `wallMs` is the clock on the wall now, ms since 1970. */
export function waitWords(
  { lowMs, likelyMs, highMs, overMs }: DryingLeft,
  wallMs: number,
): WaitWords {
  if (overMs > 0) {
    const lead = timeOver(overMs);
    return { name: 'Bone dry by now', lead, look: 'Look now.', range: `0:00 ${lead}` };
  }
  const end = timeInWords(wallMs + highMs);
  const latest = `Dry within ${hoursInWords(highMs / minuteMs)} at the latest.`;
  if (lowMs > 0)
    return {
      name: 'Bone dry in about',
      lead: hoursInWords(likelyMs / minuteMs),
      look: `Look from ${hoursInWords(minutesUp(lowMs))} on.`,
      range: `${clockFace(lowMs)} to ${clockFace(highMs)}, from ${timeInWords(wallMs + lowMs)} to ${end}`,
    };
  return {
    name: likelyMs > 0 ? 'Bone dry in about' : 'Bone dry',
    lead: likelyMs > 0 ? hoursInWords(likelyMs / minuteMs) : 'any minute',
    look: `Look now. ${latest}`,
    range: `${clockFace(highMs)} at the most, by ${end}`,
  };
}
