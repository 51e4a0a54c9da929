import { expect, test } from 'vitest';
import { defaultPaper } from '../../../../../app/core/paint/colour-of-washes.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { driedSheetOf, layMix } from '../../../../../app/core/plan/solve/dried-sheet.ts';
import type { FamilyWork } from '../../../../../app/core/plan/solve/family-work.ts';
import {
  familyWork,
  paintedBands,
  washBands,
} from '../../../../../app/core/plan/solve/family-work.ts';
import { WashFitter } from '../../../../../app/core/plan/solve/fit-family-wash.ts';
import {
  type FamilyWashes,
  polishWashes,
} from '../../../../../app/core/plan/solve/polish-washes.ts';
import { puddleOptions } from '../../../../../app/core/plan/solve/puddle-options.ts';
import { sharePuddles } from '../../../../../app/core/plan/solve/share-puddles.ts';
import { readings } from '../../../../support/plan/built-plans.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';
import { paintsNamed } from '../../../../support/plan/solved-facts.ts';

const paper = driedSheetOf(Float64Array.from(defaultPaper));

/** What these washes cost, fitted wash over wash, as the solve counts it. */
function costOf(works: readonly FamilyWork[], washes: readonly FamilyWashes[], fitter: WashFitter) {
  return works.reduce((sum, work, f) => {
    let dried = paper;
    return (washes[f] ?? []).reduce((all, own, wash) => {
      if (!own) return all + 1000;
      const judged = fitter.fit(own.option, { work, paintBits: -1, dried }, wash, 'exact');
      dried = layMix(own.option, own.load, dried);
      return all + (judged?.cost ?? 0);
    }, sum);
  }, 0);
}

test('a puddle badly chosen is changed for all that share it; it never gets dearer nor muddier', async () => {
  const { slots } = readings['forest stream'];
  const painted = slots.filter(({ reserve, share }) => !reserve && share > 0);
  const paints = paintsNamed(
    'pb29-ultramarine-blue',
    'py43-yellow-ochre',
    'pbr7-burnt-sienna',
    'pb153-phthalocyanine-blue',
  );
  const fitter = new WashFitter(await puddleOptions(paints, noCheckpoint));
  const bands = washBands(paintedBands(painted), 2);
  const families = [...new Set(painted.map(({ family }) => family))];
  const works = families.map((family) =>
    familyWork(
      family,
      painted.filter((slot) => slot.family === family),
      painted,
      bands,
    ),
  );
  // All of the first wash in one puddle of one paint, of ultramarine.
  const [blue] = fitter.options;
  const solved = works.map((work): FamilyWashes => {
    let dried = paper;
    return work.washes.map((_, wash) => {
      const active = { work, paintBits: -1, dried };
      const own =
        wash === 0 && blue
          ? (fitter.fit(blue, active, wash, 'exact')?.familyWash ?? null)
          : (sharePuddles([active], fitter, wash, 1, 'exact').familyWashes[0] ?? null);
      if (own) dried = layMix(own.option, own.load, dried);
      return own;
    });
  });
  const polished = await polishWashes(works, solved, fitter, paper, noCheckpoint);
  const [before, after] = [costOf(works, solved, fitter), costOf(works, polished, fitter)];
  expect(after).toBeLessThan(0.9 * before);
  expect(new Set(polished.map(([first]) => first?.option)).size).toBe(1);
  for (const washes of polished) {
    const used = new Set(washes.flatMap((own) => own?.option.members ?? []));
    expect(used.size).toBeLessThanOrEqual(3);
  }
  const again = await polishWashes(works, polished, fitter, paper, noCheckpoint);
  expect(costOf(works, again, fitter)).toBeLessThanOrEqual(after + 1e-9);
});

test('families with puddles of their own keep apart: none gets dearer for another', async () => {
  const paints = paintsNamed('pb29-ultramarine-blue', 'py43-yellow-ochre');
  const fitter = new WashFitter(await puddleOptions(paints, noCheckpoint));
  const colours = [
    [2, -30],
    [8, 40],
  ] as const;
  const { slots } = madeReading(tableOf([60], colours));
  const bands = washBands(paintedBands(slots), 1);
  const works = [1, 2].map((family) =>
    familyWork(
      family,
      slots.filter((slot) => slot.family === family),
      slots,
      bands,
    ),
  );
  const solved = works.map((work): FamilyWashes => {
    const active = { work, paintBits: -1, dried: paper };
    return [sharePuddles([active], fitter, 0, 1, 'exact').familyWashes[0] ?? null];
  });
  expect(solved[0]?.[0]?.option).not.toBe(solved[1]?.[0]?.option);
  const polished = await polishWashes(works, solved, fitter, paper, noCheckpoint);
  for (const [f, work] of works.entries()) {
    const cost = (washes: readonly FamilyWashes[]) =>
      costOf([work], washes.slice(f, f + 1), fitter);
    expect(cost(polished)).toBeLessThanOrEqual(cost(solved) + 1e-9);
  }
});
