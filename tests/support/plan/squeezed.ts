import { colourDifference } from '../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../app/core/colour/lab.ts';
import { colourOfWashes, type Wash } from '../../../app/core/paint/colour-of-washes.ts';
import optics from '../../../app/core/paint/data/pigment-optics.json';
import type { Paint } from '../../../app/core/paint/paint.ts';
import { thinningFor } from '../../../app/core/paint/thinning.ts';
import { paintNameIn } from '../../../app/core/plan/paint-name-in.ts';
import { type Mix, mixesBelow, surfaceOf, type WashPlan } from '../../../app/core/plan/plan.ts';
import { puddleAmount } from '../../../app/core/plan/puddle-amount.ts';
import { thinningInWords } from '../../../app/core/words/paint/mix-words.ts';
import { amountInWords } from '../../../app/core/words/plan/amounts.ts';

/** One strength of one mix as it comes out when squeezed and thinned by what is printed. */
export interface Squeezed {
  readonly mix: string;
  readonly lighterParts: boolean;
  readonly words: string;
  /** CIEDE2000 to what the plan shows, over the ground as planned. */
  readonly miss: number;
}

const fractions: Readonly<Record<string, number>> = { '¼': 0.25, '½': 0.5, '¾': 0.75 };
const spelled = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const spoonsMl: Readonly<Record<string, number>> = { drop: 0.05, teaspoon: 5, tablespoon: 15 };
/** A strip of 1 mm from an opening 5 mm wide: a cylinder of 0.0196 ml. */
const stripMl = (Math.PI / 4) * 5 * 5 * 1e-3;

/** 'a quarter of a', 'half a', '1½', '12', 'three': how many. */
function countOf(words: string): number {
  const part = ['a quarter of a', 'half a', 'three quarters of a'].indexOf(words);
  if (part >= 0) return (part + 1) / 4;
  const place = spelled.indexOf(words);
  if (place > 0) return place;
  const figures = /^(\d*)([¼½¾]?)$/.exec(words);
  if (!figures || words === '') throw new Error(`no number: ${words}`);
  return Number(figures[1] || 0) + (fractions[figures[2] ?? ''] ?? 0);
}

/** What the words of an amount tell to measure out, ml. */
export function measuredOut(words: string, ids: ReadonlyMap<string, string>) {
  const water = /: (.+) (drop|teaspoon|tablespoon)s? of water, /.exec(words);
  if (!water && !words.includes('no water')) throw new Error(`no water told: ${words}`);
  const strips = words.slice(words.indexOf(water ? ' of water, ' : ': ')).replace(/\.$/, '');
  const paints = [...strips.matchAll(/([\d.]+) (mm|cm) of ([^,]+)/g)].map(
    ([, length, unit, name = '']) => {
      const paint = ids.get(name);
      if (!paint) throw new Error(`no paint called ${name}`);
      return { paint, ml: Number(length) * (unit === 'cm' ? 10 : 1) * stripMl };
    },
  );
  const waterMl = water ? countOf(water[1] ?? '') * (spoonsMl[water[2] ?? ''] ?? 0) : 0;
  return { waterMl, paints };
}

/** 'two parts of it with one of water': ml of water to 1 ml of the puddle. */
function waterAdded(words: string): number {
  const parts = /^(\S+) parts? of it with (\S+) of water$/.exec(words);
  if (!parts) throw new Error(`no thinning: ${words}`);
  return countOf(parts[2] ?? '') / countOf(parts[1] ?? '');
}

/** Liquid on the sheet, ml/m2, by the table of the optics file: straight lines over the logarithm. */
function filmOf(concentration: number): number {
  const points = optics.consistency.ladder.map(
    ({ typicalC, filmMlPerM2 }) => [Math.log(typicalC), filmMlPerM2] as const,
  );
  const at = Math.log(concentration);
  const [first, last] = [points[0], points.at(-1)] as const;
  if (!first || !last || at <= first[0]) return first?.[1] ?? 0;
  for (const [n, [x, film]] of points.entries()) {
    const before = points[n - 1];
    if (before && at <= x)
      return before[1] + ((film - before[1]) * (at - before[0])) / (x - before[0]);
  }
  return last[1];
}

function washOf(
  plan: WashPlan,
  parts: readonly { paint: string; amount: number }[],
  load: number,
): Wash {
  const paints = parts.map(({ paint }) => plan.optics.find(({ id }) => id === paint) as Paint);
  return { paints, parts: parts.map(({ amount }) => amount), load };
}

/** Every strength of every painted mix of a plan, measured out by the printed words alone. */
export function squeezedMixes(
  plan: WashPlan,
  sheet: { widthMm: number; heightMm: number },
): Squeezed[] {
  const nameOf = paintNameIn(plan);
  const ids = new Map(plan.palette.map(({ id, name }) => [name, id]));
  const found: Squeezed[] = [];
  const told = (mix: Mix, rows: readonly Mix[], shown: { load: number; expected: Lab }): void => {
    const amount = puddleAmount(plan, rows, sheet);
    if (!amount) return;
    const words = amountInWords(amount, nameOf);
    const thinning = thinningFor(amount.concentration, shown.load);
    const more = thinning ? thinningInWords(thinning) : '';
    const { waterMl, paints } = measuredOut(words, ids);
    const paintMl = paints.reduce((all, { ml }) => all + ml, 0);
    const water = waterMl + (more ? waterAdded(more) * (paintMl + waterMl) : 0);
    const share = paintMl / (paintMl + water);
    const load = filmOf(paintMl / water) * share;
    const below = mixesBelow(plan, mix).map((each) =>
      washOf(
        plan,
        each.parts.map(({ paint, parts }) => ({ paint, amount: parts })),
        each.load,
      ),
    );
    const wash = washOf(
      plan,
      paints.map(({ paint, ml }) => ({ paint, amount: ml })),
      load,
    );
    const colour = colourOfWashes([...below, wash], surfaceOf(plan));
    found.push({
      mix: mix.id,
      lighterParts: shown !== mix,
      words: more ? `${words} ${more}` : words,
      miss: colourDifference(colour, shown.expected),
    });
  };
  for (const mix of plan.mixes) {
    if (mix.puddle === null) continue;
    const rows = plan.mixes.filter((each) => each.puddle === mix.puddle && each.wash === mix.wash);
    told(mix, rows, mix);
    if (mix.weaker) told(mix, rows, mix.weaker);
  }
  return found;
}
