import type { PaperChoice } from '../../../app/model/drying/paper-choice.ts';
import type { Weather } from '../../../app/model/drying/weather.ts';
import type { Range } from '../../../app/model/lab.ts';

/** How the sheet is held while it is wet. */
export interface PaperFixing {
  /** What is done, a sentence. */
  readonly how: string;
  /** What to mind; may be empty. */
  readonly mind: string;
  readonly minutes: Range;
}

/** From so much water on a sheet cockles as one that was wetted first, g/m2 (own figure). */
export const wettedGrams = 100;

/** Weights between those the trade sells, g/m2: 190 / 300 / 640 (90, 140, 300 lb). */
const limits = { thin: 250, thick: 500 } as const;

const lowTack = 'Low-tack tape alone does not hold a wetted sheet.';

/**
 * How a sheet is held, by its weight, what lies under it, and the most water any step puts down (g/m2). Thin paper
 * must be stretched for wet-in-wet, 300 g/m2 is taped, 640 lies as it is: common practice, no source.
 */
export function paperFixing(
  { gsm }: PaperChoice,
  { backing }: Weather,
  mostWater: number,
): PaperFixing {
  const wetted = mostWater >= wettedGrams;
  if (backing === 'block')
    return { how: 'Leave the sheet on its block.', mind: '', minutes: [2, 5] };
  if (backing === 'wet')
    return {
      how: 'Soak the sheet on both sides, lay it on a smooth board and take up the puddles.',
      mind: 'Soaked for hours the size goes and colours bleed: some minutes are enough.',
      minutes: [8, 20],
    };
  if (gsm >= limits.thick)
    return {
      how: 'Lay the sheet on a board as it is, a clip at each corner.',
      mind: '',
      minutes: [2, 5],
    };
  if (gsm >= limits.thin)
    return wetted
      ? {
          how: 'Fix the sheet to a board all round with gummed tape or staples.',
          mind: lowTack,
          minutes: [4, 10],
        }
      : { how: 'Tape or clip the sheet to a board.', mind: '', minutes: [3, 8] };
  return wetted
    ? {
        how: 'Stretch the sheet: wet both sides, fix it to a board all round with gummed tape, let it dry flat.',
        mind: `That takes some hours: best the day before. ${lowTack}`,
        minutes: [10, 20],
      }
    : {
        how: 'Tape the sheet to a board on all sides.',
        mind: 'Paper this thin cockles: stretch it if it has to lie flat.',
        minutes: [4, 10],
      };
}
