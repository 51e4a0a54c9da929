import { longestNamed, sideOf } from '../side-words.ts';
import { isTextured } from '../textured-slot.ts';
import { wayRound } from './borders-of.ts';
import { slotAt, type WashInHand } from './wash-in-hand.ts';

export interface TexturedPlaces {
  /** The two largest, by their colour. */
  readonly names: readonly string[];
  /** Share of the sheet, 0..1. */
  readonly share: number;
}

/**
 * What of a wash is broken up, at least `least` of the sheet, and as soft along its way round as `isAs` asks
 * (0..1 of its length); null where nothing is.
 */
export function texturedPlaces(
  wash: WashInHand,
  least: number,
  isAs: (soft: number) => boolean,
): TexturedPlaces | null {
  const { facts, finished, sheetMm2 } = wash;
  const places = [...finished].filter((i) => {
    const slot = slotAt(wash, i);
    const isBroken = slot.share >= least && isTextured(slot, sheetMm2);
    return isBroken && isAs(wayRound(facts.reading.borders, i).soft);
  });
  if (places.length === 0) return null;
  const shares = places.map((i) => [sideOf(facts, i), slotAt(wash, i).share] as const);
  return {
    names: longestNamed(shares, 2),
    share: shares.reduce((sum, [, share]) => sum + share, 0),
  };
}
