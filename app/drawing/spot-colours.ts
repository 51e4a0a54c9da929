import type { Lab } from '../model/lab.ts';
import { meanColour, type Pixels } from './mean-colour.ts';

export interface SpotColours {
  readonly lab: Lab;
  /** What lies around it, in three rows of three from the upper left, the spot itself in the middle. */
  readonly grid: readonly Lab[];
}

/** A spot is this wide on the sheet, mm; its neighbours are this wide and this far away (own figures). */
const spotMm = 1;
const neighbourMm = 3;
const awayMm = 5;

/** The colours at a place (0..1 of the picture's width and height), as means of linear light. */
export function spotColours(
  pixels: Pixels,
  at: readonly [x: number, y: number],
  pxPerMm: number,
): SpotColours {
  const [x, y] = [at[0] * pixels.width, at[1] * pixels.height];
  const lab = meanColour(pixels, x, y, Math.max(1, (spotMm / 2) * pxPerMm));
  const grid = [-1, 0, 1].flatMap((down) =>
    [-1, 0, 1].map((right) => {
      if (!down && !right) return lab;
      const away = awayMm * pxPerMm;
      const radius = Math.max(1, (neighbourMm / 2) * pxPerMm);
      return meanColour(pixels, x + right * away, y + down * away, radius);
    }),
  );
  return { lab, grid };
}
