import { mostWashes, valueReachedWithin } from '../../limits.ts';
import type { Paint } from '../../paint/paint.ts';
import { darkestOf } from '../../palette/library/mix-library.ts';
import {
  type ChosenPalette,
  openSearch,
  paintsOf,
  setStillGood,
} from '../../palette/search/search-palette.ts';
import type { Reading } from '../../reading/reading.ts';
import { proposeWashes } from '../evening/propose-washes.ts';
import type { PlanMemory } from '../plan-memory.ts';
import type { PlanCheckpoint, PlannedSlots } from '../targets/planned-slots.ts';
import { ratePalette } from './rate-palette.ts';
import { paletteAsked, washSolver } from './solve-palette.ts';

/** L* that a good dark of two usual paints reaches: the tone a search begins with (own). */
const usualDarkest = 22.5;

/** L* by which a palette may miss it: darks that much lighter are not worth a word (own). */
const aboutAsDark = 2.5;

/** Ties solved wash over wash, each in as many washes as the first of them is to have (own). */
const mostSolved = 4;

/** Another tie is taken where wash over wash it is so much better, CIEDE2000: less is not worth a word (own). */
const betterBy = 0.6;

/** One of fewer paints is taken where it is as good: a paint more that no wash needs is none to buy, CIEDE2000 (own). */
const asGood = 0.01;

/**
 * Searches for the tone of a usual palette, or of hers, and again where the one found is by half a value darker or
 * lighter. A palette has to reach about the tone it is searched for: else lighter and lighter ones would do.
 */
async function searchTwice(
  { wide, wishes, known, forDarkest }: PlannedSlots,
  checkpoint: PlanCheckpoint,
  { library }: PlanMemory,
) {
  const named = wishes.chosen?.length ? wishes.chosen : (wishes.present ?? []);
  const hers = known.filter(({ id }) => named.includes(id));
  const usual = Math.max(usualDarkest, wide.range.darkest ?? 0);
  const open = async (darkest: number, from: number) => {
    const { range, slots } = forDarkest(darkest);
    const told = (part: number) => checkpoint(from + 0.15 * part, 'paints');
    const limits = { dark: range.dark + aboutAsDark };
    return { range, slots, search: await openSearch(slots, known, wishes, told, library, limits) };
  };
  const first = await open(hers.length > 0 ? darkestOf(hers) : usual, 0.1);
  const found = darkestOf(paintsOf(first.search, first.search.ties[0]));
  const moved = Math.abs(forDarkest(found).range.dark - first.range.dark);
  return moved > valueReachedWithin ? open(found, 0.25) : first;
}

interface RatedTie {
  readonly paints: readonly Paint[];
  readonly rating: number;
}

/** Whether a tie is to be taken instead of another one. */
const isWorth = (tie: RatedTie, than: RatedTie): boolean =>
  tie.rating < than.rating - betterBy ||
  (tie.paints.length < than.paints.length && tie.rating <= than.rating + asGood);

/**
 * Which of palettes that are as good comes out better once wash lies over wash. What one number of washes does for a
 * palette wavers by half a CIEDE2000 from copy to copy of a photo: so what seems better than the first has to be so on
 * the mean with one wash more, too.
 */
async function chooseTie(
  ties: readonly (readonly Paint[])[],
  washes: number,
  rateIn: (tie: number, washes: number) => Promise<number>,
): Promise<readonly Paint[]> {
  const once: RatedTie[] = [];
  for (const [n, paints] of ties.entries()) once.push({ paints, rating: await rateIn(n, washes) });
  const seemWorth = [...once.keys()].filter((n) => n > 0 && isWorth(once[n], once[0]));
  if (seemWorth.length === 0) return ties[0];
  const twice: RatedTie[] = [];
  for (const n of [0, ...seemWorth]) {
    const { paints, rating } = once[n];
    const other = await rateIn(n, Math.min(mostWashes, washes + 1));
    twice.push({ paints, rating: (rating + other) / 2 });
  }
  return twice.reduce((best, tie) => (isWorth(tie, best) ? tie : best)).paints;
}

/**
 * The palette for a reading. The one the painting has (`wishes.present`) stays while no other is better by more than
 * a tie; else of the sets that cost least the first, unless another of them comes out better once wash lies over wash,
 * or as good with fewer paints.
 * Takes 0.1 to 0.5 of the planning. Throws RangeError as `paintsAllowed`.
 */
export async function choosePalette(
  reading: Reading,
  planned: PlannedSlots,
  checkpoint: PlanCheckpoint,
  memory: PlanMemory,
): Promise<ChosenPalette> {
  const asking = paletteAsked(planned.wide.slots, planned.known, planned.wishes);
  const before = memory.palettes.get(asking);
  if (before) return before;
  const { search, slots } = await searchTwice(planned, checkpoint, memory);
  const kept = setStillGood(search, planned.wishes.present ?? []);
  const sets = kept ? [kept] : search.ties.slice(0, mostSolved);
  const ties = sets.map((set) => paintsOf(search, set));
  let paints: readonly Paint[] = ties[0];
  if (ties.length > 1) {
    const solvers = ties.map((some, n) => {
      const told = () => checkpoint(0.4 + (0.1 * n) / mostSolved, 'paints');
      return washSolver(reading, planned, some, told, memory);
    });
    const bands = reading.bands.length;
    const { washes } = await proposeWashes(slots, bands, planned.wishes, solvers[0]);
    paints = await chooseTie(ties, washes, async (tie, count) =>
      ratePalette(search, (await solvers[tie](count)).facts, planned.wide),
    );
  }
  const chosen = { paints, search, slots };
  memory.palettes.keep(asking, chosen);
  return chosen;
}
