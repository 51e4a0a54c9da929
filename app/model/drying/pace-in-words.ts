import type { DryingClockName, Pace } from './learn-pace.ts';
import { type WaterKind, waterWords } from './water-of.ts';

const does = { shine: 'lose their shine', dry: 'get bone dry' } as const;

/** What was learned of one clock for one kind of wash, as a sentence; null before the first tap. */
export function paceInWords(clock: DryingClockName, wash: WaterKind, pace: Pace): string | null {
  if (pace.taps === 0) return null;
  const taps = pace.taps === 1 ? '1 tap' : `${pace.taps} taps`;
  const name = waterWords[wash];
  const subject = `${name[0]?.toUpperCase()}${name.slice(1)}`;
  return `${subject} ${does[clock]} ${speedWords(pace.factor)}, from ${taps}.`;
}

function speedWords(factor: number): string {
  const times = (n: number): string => (Math.round(n * 10) / 10).toString();
  if (factor > 1.05) return `in ${times(factor)} times the time reckoned`;
  if (factor < 0.95) return `${times(1 / factor)} times as fast as reckoned`;
  return 'as reckoned';
}
