import type { Border } from '../../../../app/model/reading.ts';

/** One slot's way round: its borders, and what share of their length is soft or lost. */
export interface WayRound {
  readonly borders: readonly Border[];
  readonly lengthMm: number;
  readonly soft: number;
}

export const otherSide = ({ a, b }: Border, slot: number): number => (a === slot ? b : a);

export function wayRound(borders: readonly Border[], slot: number): WayRound {
  const own = borders.filter(({ a, b }) => a === slot || b === slot);
  const lengthMm = own.reduce((sum, border) => sum + border.lengthMm, 0);
  const softMm = own.reduce(
    (sum, { soft, lost, ...border }) => sum + border.lengthMm * Math.min(1, soft + lost),
    0,
  );
  return { borders: own, lengthMm, soft: lengthMm > 0 ? softMm / lengthMm : 0 };
}
