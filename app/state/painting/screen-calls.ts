import type { AnalysisClient } from '../../client/analysis-client.ts';
import { decidedReading } from '../../core/decisions/decided-reading.ts';
import type { OwnBox } from '../../core/paint/own-box.ts';
import type { PaletteOffers } from '../../core/palette/offers/palette-offer.ts';
import { wishesWithPalette } from './read-painting.ts';
import type { Studio } from './studio.ts';

/** What a screen may ask about paints alone, without a picture. Each rejects when its signal is aborted. */
export type PaintCalls = Pick<AnalysisClient, 'mixNeighbours' | 'mixingChart'>;

/** What the scraps may ask. */
export type ScrapCalls = Pick<AnalysisClient, 'lookAtScrap'>;

/** What a screen may ask about a picture that was read. Each rejects when its signal is aborted. */
export type PictureCalls = Pick<AnalysisClient, 'softBlend' | 'outline'>;

/** What the record may ask: her painting is decoded as a photo to paint from is, upright everywhere. */
export type RecordCalls = PictureCalls & Pick<AnalysisClient, 'openPhoto'>;

export type PaletteCalls = Pick<AnalysisClient, 'palettes'>;

/** What is asked of a plan that was handed on. */
export type StandInCalls = Pick<AnalysisClient, 'standIns'>;

/**
 * The palette of the open painting's plan, and others to choose from; null while there is nothing to paint.
 * `onPart`: 0..1 of the work. Rejects when aborted, or with a sentence of the worker's.
 */
export async function requestPalettes(
  calls: PaletteCalls,
  { painting, seen, plan }: Pick<Studio, 'painting' | 'seen' | 'plan'>,
  box: OwnBox,
  signal: AbortSignal,
  onPart: (part: number) => void,
): Promise<PaletteOffers | null> {
  const current = painting.value;
  const opened = seen.value;
  if (!current || !opened) return null;
  const reading = decidedReading(opened.reading, current);
  return calls.palettes(signal, reading, wishesWithPalette(current, box, plan.value), onPart);
}
