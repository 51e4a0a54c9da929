import { colourDifference } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { costOfUnsteadiness } from '../../limits.ts';
import { defaultPaper } from '../../paint/colour-of-washes.ts';
import { mixSpectra, type PaintSpectra } from '../../paint/layer.ts';
import { strengthOff } from '../../paint/mix-sensitivity.ts';
import { type Paint, strengthOf } from '../../paint/paint.ts';
import type { PaletteSearch } from '../../palette/search/search-palette.ts';
import type { Slot } from '../../reading/slot.ts';
import type { Mix } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { planQuality } from '../reach/plan-quality.ts';
import type { PlannedSlots } from '../targets/planned-slots.ts';
import { type DriedSheet, driedSheetOf, labOfSheet, layMix } from './dried-sheet.ts';

type Washed = Pick<PlanFacts, 'passages'>;

/**
 * Mean CIEDE2000 over the painted area between the sheet after the last wash and the slots' targets. Slots no wash
 * touches are taken as paper.
 */
export function meanFinalError(
  slots: readonly Slot[],
  { passages }: Washed,
  paper: number,
): number {
  const sheet: Lab[] = slots.map(() => [paper, 0, 0]);
  for (const wash of passages.flatMap(({ washes }) => washes)) {
    for (const [n, slot] of wash.slots.entries()) sheet[slot] = wash.after[n];
  }
  return planQuality(slots, sheet).colour;
}

/** Every slot after the last wash, all mixes made of these paints; slots no wash touches stay paper. */
function lastSheets(
  slots: readonly Slot[],
  { passages }: Washed,
  paints: readonly Paint[],
): DriedSheet[] {
  const paper = driedSheetOf(Float64Array.from(defaultPaper));
  const known = new Map(paints.map((paint) => [paint.id, paint]));
  const spectraOf = ({ parts }: Mix): PaintSpectra =>
    mixSpectra(
      parts.map(({ paint }) => known.get(paint) as Paint),
      parts.map((part) => part.parts),
    );
  const sheets = slots.map(() => paper);
  for (const wash of passages.flatMap(({ washes }) => washes)) {
    for (const mix of wash.mixes) {
      if (mix.parts.length === 0) continue;
      const spectra = spectraOf(mix);
      for (const i of wash.slots) {
        const { passage, family, band } = slots[i];
        if (passage !== mix.passage || family !== mix.family) continue;
        const load = mix.weaker?.bands.includes(band) ? mix.weaker.load : mix.load;
        sheets[i] = layMix(spectra, load, sheets[i]);
      }
    }
  }
  return sheets;
}

/**
 * How unsteady the last sheet is in her hand: mean over the painted area of the difference to be expected (CIEDE2000,
 * root of the sum of squares over the paints) where a tube is off by `strengthOff`, in all washes alike, as one tube
 * paints them all. As `MixSensitivity` says of one mix, of washes over each other.
 */
export function unsteadinessOf(
  slots: readonly Slot[],
  washed: Washed,
  paints: readonly Paint[],
): number {
  const planned = lastSheets(slots, washed, paints).map(labOfSheet);
  const squares = new Float64Array(slots.length);
  for (const [n, paint] of paints.entries()) {
    const stronger = { ...paint, strength: (1 + strengthOff) * strengthOf(paint) };
    const sheets = lastSheets(slots, washed, paints.with(n, stronger));
    for (const [i, sheet] of sheets.entries()) {
      squares[i] = squares[i] + colourDifference(planned[i], labOfSheet(sheet)) ** 2;
    }
  }
  let [sum, area] = [0, 0];
  for (const [i, { reserve, share }] of slots.entries()) {
    if (reserve) continue;
    sum += share * Math.sqrt(squares[i]);
    area += share;
  }
  return area > 0 ? sum / area : 0;
}

/**
 * What some of the searched paints cost once they are laid wash over wash, by the measures of the search: their
 * prices, how far the last sheet ends from the picture's own targets, and how unsteady it is in her hand. `paints` are
 * those of the washes; `wide` are the targets for the darkest any paints of hers reach, the same for all palettes, so
 * that one which goes darker, as the picture does, is nearer. CIEDE2000; lower is better.
 */
export function ratePalette(
  { paints: searched, tables }: PaletteSearch,
  { paints, passages }: Pick<PlanFacts, 'paints' | 'passages'>,
  { slots, range }: PlannedSlots['wide'],
): number {
  const prices = paints.reduce((sum, paint) => sum + tables.prices[searched.indexOf(paint)], 0);
  const unsteady = unsteadinessOf(slots, { passages }, paints);
  return prices + meanFinalError(slots, { passages }, range.paper) + costOfUnsteadiness * unsteady;
}
