import type { AnalysisClient } from '../analysis/analysis-client.ts';
import { decidedReading } from '../model/decided-reading.ts';
import type { OwnBox } from '../model/own-box.ts';
import type { PaletteOffers } from '../model/palette-offer.ts';
import { planWishes } from '../model/wishes.ts';
import type { Studio } from './studio.ts';

export type PaletteCalls = Pick<AnalysisClient, 'palettes'>;

/**
 * The palette of the open painting's plan, and others to choose from; null while there is nothing to paint.
 * `onPart`: 0..1 of the work. Rejects when aborted, or with a sentence of the worker's.
 */
export async function palettesFor(
  calls: PaletteCalls,
  { painting, seen }: Pick<Studio, 'painting' | 'seen'>,
  box: OwnBox,
  leaving: AbortSignal,
  onPart: (part: number) => void,
): Promise<PaletteOffers | null> {
  const of = painting.value;
  const now = seen.value;
  if (!of || !now) return null;
  const reading = decidedReading(now.reading, of);
  return calls.palettes(leaving, reading, planWishes(of.decisions, box), onPart);
}
