import { mostPaintsInMix } from '../../limits.ts';
import type { Checkpoint } from '../../palette/checkpoint.ts';
import { type DriedSheet, layMix } from './dried-sheet.ts';
import type { FamilyWork } from './family-work.ts';
import type { FamilyWash, Precision, WashFitter } from './fit-family-wash.ts';
import type { PuddleOption } from './puddle-options.ts';
import { leftOut } from './share-puddles.ts';

/** For every family, wash by wash: what it is painted with; null where every puddle would lighten the sheet. */
export type FamilyWashes = readonly (FamilyWash | null)[];

/** Options of least estimated cost that are then fitted exactly. */
const fittedExactly = 6;

/** Some washes of a family, what they cost, and the sheet after them. */
interface Refitted {
  readonly cost: number;
  readonly washes: FamilyWashes;
  readonly dried: DriedSheet;
}

/** The items of least cost, cheapest first; of those that cost the same the earlier. */
class Cheapest<T> {
  readonly items: T[] = [];
  readonly #costs: number[] = [];
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  /** What costs more is not among them. */
  get enough(): number {
    return this.#costs.length < this.#most ? Number.POSITIVE_INFINITY : this.#costs[this.#most - 1];
  }

  add(item: T, cost: number): void {
    if (this.#costs.length === this.#most && !(cost < this.enough)) return;
    let place = this.#costs.length;
    while (place > 0 && this.#costs[place - 1] > cost) place--;
    this.#costs.splice(place, 0, cost);
    this.items.splice(place, 0, item);
    this.#costs.length = Math.min(this.#costs.length, this.#most);
    this.items.length = this.#costs.length;
  }
}

/** How many paints some bits name. */
function countOf(bits: number): number {
  let count = 0;
  for (let left = bits; left !== 0; left &= left - 1) count++;
  return count;
}

/**
 * Changes one puddle at a time, for all the families that share it, to any mix that leaves each of them at most three
 * paints, with all their loads fitted again wash over wash; keeps what costs less exactly. One pass, light to dark.
 * Returns the washes of every family, in the order of `works`.
 */
export async function polishWashes(
  works: readonly FamilyWork[],
  solved: readonly FamilyWashes[],
  fitter: WashFitter,
  paper: DriedSheet,
  checkpoint: Checkpoint,
): Promise<FamilyWashes[]> {
  const best = [...solved];
  const bare: Refitted = { cost: 0, washes: [], dried: paper };
  const optionsOf = (f: number): (PuddleOption | null)[] =>
    best[f].map((familyWash) => familyWash?.option ?? null);

  /**
   * The family's washes from these options after those of `before`, each fitted over the dried one before it. Given up,
   * with the cost so far, where that is more than `enough`.
   */
  function refit(
    f: number,
    options: readonly (PuddleOption | null)[],
    precision: Precision,
    before: Refitted,
    enough: number,
  ): Refitted {
    let { cost, dried } = before;
    const washes = [...before.washes];
    for (let wash = washes.length; wash < options.length && cost <= enough; wash++) {
      const option = options[wash];
      const active = { work: works[f], paintBits: -1, dried };
      const judged = option && fitter.fit(option, active, wash, precision);
      cost += judged ? judged.cost : leftOut;
      if (judged) dried = layMix(judged.familyWash.option, judged.familyWash.load, dried);
      washes.push(judged ? judged.familyWash : null);
    }
    return { cost, washes, dried };
  }

  const most = best.reduce((all, { length }) => Math.max(all, length), 0);
  for (let wash = 0; wash < most; wash++) {
    const puddles = new Set(best.flatMap((washes) => washes[wash]?.option ?? []));
    for (const puddle of puddles) {
      await checkpoint(1);
      const sharing = [...works.keys()].filter((f) => best[f][wash]?.option === puddle);
      const others = sharing.map((f) =>
        optionsOf(f).reduce((bits, own, n) => (own && n !== wash ? bits | own.paintBits : bits), 0),
      );
      const optionsAt = sharing.map(optionsOf);
      /** What the washes before come to does not hang on the option tried. */
      const beforeIn = (precision: Precision): Refitted[] =>
        sharing.map((f, n) =>
          refit(f, optionsAt[n].slice(0, wash), precision, bare, Number.POSITIVE_INFINITY),
        );
      const refitAll = (
        option: PuddleOption,
        precision: Precision,
        before: readonly Refitted[],
        enough = Number.POSITIVE_INFINITY,
      ) => {
        const fitted: Refitted[] = [];
        let cost = 0;
        for (const [n, f] of sharing.entries()) {
          const left = cost > enough ? Number.NEGATIVE_INFINITY : enough;
          fitted.push(refit(f, optionsAt[n].with(wash, option), precision, before[n], left));
          cost += fitted[n].cost;
        }
        return { fitted, cost };
      };
      const estimated = beforeIn('estimate');
      const likely = new Cheapest<PuddleOption>(fittedExactly);
      for (const option of fitter.options) {
        if (!others.every((bits) => countOf(bits | option.paintBits) <= mostPaintsInMix)) continue;
        likely.add(option, refitAll(option, 'estimate', estimated, likely.enough).cost);
      }
      const fittedBefore = beforeIn('exact');
      let { cost: least } = refitAll(puddle, 'exact', fittedBefore);
      for (const option of likely.items) {
        const { fitted, cost } = refitAll(option, 'exact', fittedBefore);
        if (cost >= least - 1e-9) continue;
        least = cost;
        for (const [n, f] of sharing.entries()) best[f] = fitted[n].washes;
      }
    }
  }
  return best;
}
