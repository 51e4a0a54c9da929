import type { Paint } from '../../../app/model/paint.ts';
import type { Reading } from '../../../app/model/reading.ts';
import type { Slot } from '../../../app/model/slot.ts';
import type { Mix } from '../../../app/model/wash-plan.ts';
import { reflectanceOfWashes, type Wash } from '../optics/colour-of-washes.ts';
import { mudSentence } from '../optics/mud-sentence.ts';
import { runTogether } from './run-together.ts';

/** Rows with what is to be said of their puddles: mud, and colours that may run together on the paper. */
export function mixNotes(
  mixes: readonly Mix[],
  reading: Pick<Reading, 'borders' | 'families'>,
  slots: readonly Slot[],
  paints: readonly Paint[],
): Mix[] {
  const paintOf = (id: string): Paint => {
    const paint = paints.find((each) => each.id === id);
    if (!paint) throw new RangeError(`A mix names a paint that is not there: ${id}`);
    return paint;
  };
  const washOf = ({ parts, load }: Mix): Wash => ({
    paints: parts.map(({ paint }) => paintOf(paint)),
    parts: parts.map((part) => part.parts),
    load,
  });
  const nameOf = (family: number): string =>
    reading.families.find(({ id }) => id === family)?.name ?? 'colour';
  const groundOf = (mix: Mix) =>
    reflectanceOfWashes(
      mixes
        .filter(
          ({ wash, passage, family, puddle }) =>
            puddle && wash < mix.wash && passage === mix.passage && family === mix.family,
        )
        .map(washOf),
    );
  const together = new Map<string, readonly [number, number]>();
  const places = new Set(mixes.map(({ passage, wash }) => `${passage}/${wash}`));
  for (const place of places) {
    const rows = mixes
      .filter(({ passage, wash }) => `${passage}/${wash}` === place)
      .map((mix) => ({ mix, ground: groundOf(mix) }));
    // One paint has nothing to run together with.
    if (paints.length < 2) continue;
    for (const [id, pair] of runTogether(rows, reading, slots, paintOf)) together.set(id, pair);
  }
  return mixes.map((mix) => {
    if (mix.puddle === null) return mix;
    const pair = together.get(mix.id);
    const notes = [
      mudSentence(washOf(mix), mix.target, mix.expected),
      pair &&
        `Instead of mixing this you can let the ${nameOf(pair[0])} and the ${nameOf(pair[1])} run together on the paper.`,
    ].filter((note) => typeof note === 'string');
    return notes.length > 0 ? { ...mix, notes } : mix;
  });
}
