/** A side or a corner of the sheet. */
export const sides = [
  'right',
  'lower right',
  'bottom',
  'lower left',
  'left',
  'upper left',
  'top',
  'upper right',
] as const;

export type Side = (typeof sides)[number];

/** The side a direction points to; x to the right, y down. */
export function sideTowards(x: number, y: number): Side {
  const eighth = Math.round(Math.atan2(y, x) / (Math.PI / 4));
  return sides[(eighth + 8) % 8] as Side;
}

export const oppositeSide = (side: Side): Side => sides[(sides.indexOf(side) + 4) % 8] as Side;

/** 'at the top', 'on the left', 'upper left': as places are said elsewhere. */
export function sideInWords(side: Side): string {
  if (side === 'top' || side === 'bottom') return `at the ${side}`;
  return side === 'left' || side === 'right' ? `on the ${side}` : side;
}

/** What of the board is raised: 'the top edge', 'the upper left corner'. */
export const edgeOfBoard = (side: Side): string =>
  `the ${side} ${side.includes(' ') ? 'corner' : 'edge'}`;
