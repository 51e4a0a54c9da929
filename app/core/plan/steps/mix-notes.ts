import { colourDifference } from '../../colour/ciede2000.ts';
import { labOfReflectance, type Spectrum, spectrumSize } from '../../colour/spectrum.ts';
import { reflectanceOfWashes, type Wash } from '../../paint/colour-of-washes.ts';
import { layOver, mixSpectra, paintLayer } from '../../paint/layer.ts';
import { mudOf } from '../../paint/mud.ts';
import type { Paint } from '../../paint/paint.ts';
import type { Border, Reading } from '../../reading/reading.ts';
import type { Slot } from '../../reading/slot.ts';
import type { Said } from '../../words/plan/words.ts';
import type { Mix } from '../plan.ts';

/** More of a border than this is soft: the two may run together (own). */
const mostlySoft = 0.6;
/** A border shorter than this is no place to let colours run, mm on the sheet (own). */
const leastBorderMm = 20;
/** Largest CIEDE2000 at which two washes mixed on the paper may replace the mix (own). */
const nearEnough = 6;

interface Row {
  readonly mix: Mix;
  /** Reflectance of the sheet under the mix, 36 samples. */
  readonly underneath: Spectrum;
}

/** Share of the common border of two families of one passage that is soft, and its length. */
function softness(
  { borders }: Pick<Reading, 'borders'>,
  slots: readonly Slot[],
  passage: string,
  one: number,
  two: number,
): number {
  const is = (slot: Slot | undefined, family: number): boolean =>
    slot?.passage === passage && slot.family === family;
  const meets = ({ a, b }: Border): boolean =>
    (is(slots[a], one) && is(slots[b], two)) || (is(slots[a], two) && is(slots[b], one));
  const common = borders.filter(meets);
  const length = common.reduce((all, { lengthMm }) => all + lengthMm, 0);
  if (length < leastBorderMm) return 0;
  return common.reduce((all, { soft, lengthMm }) => all + soft * lengthMm, 0) / length;
}

/** K and S of all that a mix lays down. */
function laid(mix: Mix, paintOf: (id: string) => Paint) {
  const { K, S } = mixSpectra(
    mix.parts.map(({ paint }) => paintOf(paint)),
    mix.parts.map(({ parts }) => parts),
  );
  return { K: K.map((k) => k * mix.load), S: S.map((s) => s * mix.load) };
}

/** Whether two washes running into each other over the sheet under a mix come to the colour of that mix. */
function makes(row: Row, one: Mix, two: Mix, paintOf: (id: string) => Paint): boolean {
  const [first, second] = [laid(one, paintOf), laid(two, paintOf)];
  const sheet = new Float64Array(spectrumSize);
  return [0.25, 0.5, 0.75].some((share) => {
    const { K, S } = mixSpectra([first, second], [share, 1 - share]);
    const lab = labOfReflectance(layOver(paintLayer(K, S, 1), row.underneath, sheet));
    return colourDifference(lab, row.mix.expected) <= nearEnough;
  });
}

/**
 * For rows of one wash of one passage: mix id -> the two families whose colours may run together in its
 * place. Its family meets both along mostly soft borders, its puddle serves no other family, and the two
 * puddles, mixed on the paper, come to its colour.
 */
function runTogether(
  rows: readonly Row[],
  reading: Pick<Reading, 'borders'>,
  slots: readonly Slot[],
  paintOf: (id: string) => Paint,
): ReadonlyMap<string, readonly [number, number]> {
  const painted = rows.filter(({ mix }) => mix.puddle !== null);
  const found = new Map<string, readonly [number, number]>();
  for (const row of painted) {
    const { puddle, passage, family, id } = row.mix;
    if (painted.some(({ mix }) => mix.puddle === puddle && mix !== row.mix)) continue;
    // A mix that is itself replaced must not stand in for another.
    const near = painted.filter(
      ({ mix }) =>
        mix.puddle !== puddle &&
        !found.has(mix.id) &&
        softness(reading, slots, passage, family, mix.family) > mostlySoft,
    );
    const pairs = near.flatMap((one, i) => near.slice(i + 1).map((two) => [one, two] as const));
    const pair = pairs.find(
      ([one, two]) => one.mix.puddle !== two.mix.puddle && makes(row, one.mix, two.mix, paintOf),
    );
    if (pair) found.set(id, [pair[0].mix.family, pair[1].mix.family]);
  }
  return found;
}

/** Adds notes to the mixes: muddy puddles, and colours that may run together on the paper instead. */
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
  const underneathOf = (mix: Mix) =>
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
      .map((mix) => ({ mix, underneath: underneathOf(mix) }));
    // One paint has nothing to run together with.
    if (paints.length < 2) continue;
    for (const [id, pair] of runTogether(rows, reading, slots, paintOf)) together.set(id, pair);
  }
  return mixes.map((mix) => {
    if (mix.puddle === null) return mix;
    const pair = together.get(mix.id);
    const mud = mudOf(washOf(mix), mix.target, mix.expected);
    const notes: Said[] = mud ? [{ say: 'mix/mud', mud }] : [];
    if (pair) {
      const [one, two] = pair.map(nameOf);
      notes.push({ say: 'mix/run-together', one, two });
    }
    return notes.length > 0 ? { ...mix, notes } : mix;
  });
}
