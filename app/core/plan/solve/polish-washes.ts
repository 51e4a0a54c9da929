import { mostPaintsInMix } from '../../limits.ts';
import type { Checkpoint } from '../../palette/checkpoint.ts';
import { type DriedSheet, layMix } from './dried-sheet.ts';
import type { FamilyWork } from './family-work.ts';
import type { FamilyWash, Precision, WashFitter } from './fit-family-wash.ts';
import type { PuddleOption } from './puddle-options.ts';
import { itemsOf, leftOut } from './share-puddles.ts';

/** For every family, wash by wash: what it is painted with; null where every puddle would lighten the sheet. */
export type FamilyWashes = readonly (FamilyWash | null)[];

/** Options of least estimated cost that are then fitted exactly. */
const fittedExactly = 6;

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
  const optionsOf = (f: number): (PuddleOption | null)[] =>
    best[f].map((familyWash) => familyWash?.option ?? null);

  /** The family's washes from these options, each fitted over the dried one before. */
  function refit(f: number, options: readonly (PuddleOption | null)[], precision: Precision) {
    let cost = 0;
    let dried = paper;
    const washes = options.map((option, wash) => {
      const work = works[f];
      const judged = option && fitter.fit(option, { work, paintBits: -1, dried }, wash, precision);
      cost += judged ? judged.cost : leftOut;
      if (judged) dried = layMix(judged.familyWash.option, judged.familyWash.load, dried);
      return judged ? judged.familyWash : null;
    });
    return { cost, washes };
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
      const refitAll = (option: PuddleOption, precision: Precision) => {
        const fitted = sharing.map((f) => refit(f, optionsOf(f).with(wash, option), precision));
        return { fitted, cost: fitted.reduce((sum, each) => sum + each.cost, 0) };
      };
      const likely = fitter.options
        .filter(({ paintBits }) =>
          others.every((bits) => itemsOf(bits | paintBits).length <= mostPaintsInMix),
        )
        .map((option) => ({ option, cost: refitAll(option, 'estimate').cost }))
        .sort((one, two) => one.cost - two.cost)
        .slice(0, fittedExactly);
      let { cost: least } = refitAll(puddle, 'exact');
      for (const { option } of likely) {
        const { fitted, cost } = refitAll(option, 'exact');
        if (cost >= least - 1e-9) continue;
        least = cost;
        for (const [n, f] of sharing.entries()) best[f] = fitted[n].washes;
      }
    }
  }
  return best;
}
