import { isNearlyAllHard } from '../../app/model/nearly-all-hard.ts';
import type { Reading, Warning } from '../../app/model/reading.ts';
import type { ClippedShares } from './pixels/linear-raster.ts';
import { flatnessWarnings } from './values/flatness.ts';

/** More of the area than this in shapes under 5 x 5 mm is too broken for the sheet. */
const tooBroken = 1 / 3;
/** Fewer px than this on the long side show no brush-scale shapes on a usual sheet. */
const smallLongSidePx = 400;

export interface WarningFacts {
  readonly reading: Omit<Reading, 'warnings'>;
  readonly clipped: ClippedShares;
  /** Bands she wished, and tones the picture holds. */
  readonly wished: number | undefined;
  readonly tones: number;
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** Everything worth telling about a reading, the most important first. */
export function pictureWarnings({ reading, clipped, wished, tones }: WarningFacts): Warning[] {
  const found: Warning[] = [];
  const { slots, borders, bands, brokenShare, raster } = reading;
  const { histogram } = reading.lightness;
  if (slots.every((slot) => slot.reserve)) {
    found.push({
      code: 'nothing-to-paint',
      text: 'Everything in this picture is as light as the paper: there is nothing to paint. Choose another photo.',
    });
  } else if (bands.length < Math.max(2, Math.min(wished ?? 2, 7)) && tones < 7) {
    const count = bands.length === 1 ? 'one value' : `${bands.length} values`;
    found.push({
      code: 'few-tones',
      text: `The picture holds no more than ${count}: that is all the study can show. Choose a photo with more light and shade if you want more.`,
    });
  }
  if (brokenShare > tooBroken) {
    found.push({
      code: 'too-broken',
      text: `${percent(brokenShare)} of the picture lies in shapes too small for this sheet: take a larger sheet, a smaller part of the photo, or fewer values.`,
    });
  }
  if (bands.length > 1) found.push(...flatnessWarnings({ histogram, clipped, slots, borders }));
  if (isNearlyAllHard(reading.edges ?? [], reading.sheet)) {
    found.push({
      code: 'all-hard',
      text: 'Nearly every edge is hard, which looks stiff and cut out: choose some away from the centre of interest to soften or lose.',
    });
  }
  if (Math.max(raster.width, raster.height) < smallLongSidePx) {
    found.push({
      code: 'small-picture',
      text: 'The photo is very small, so shapes and edges are rough: use the original photo if you have it.',
    });
  }
  return found;
}
