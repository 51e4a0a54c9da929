import type { Mix } from '../wash-plan.ts';
import type { ScrapPuddle } from './scrap-verdicts.ts';

/** A puddle to brush on a scrap: at its strongest use. */
export interface PuddleToCompare extends ScrapPuddle {
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
