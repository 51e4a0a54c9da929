import { wayRound } from '../../reading/edges/slot-borders.ts';
import { longestNamed, sideOf } from '../edges/wash-edges.ts';
import { isTextured } from '../steps/finishing-steps.ts';
import {
  fittedNames,
  slotAt,
  type TechniqueDetector,
  type WashInHand,
} from './technique-proposal.ts';
import { asTheShineGoes } from './wetness-windows.ts';

interface TexturedPlaces {
  /** The two largest, by their colour. */
  readonly names: readonly string[];
  /** Share of the sheet, 0..1. */
  readonly share: number;
}

/**
 * What of a wash is broken up, at least `least` of the sheet, and as soft along its way round as `isAs` asks
 * (0..1 of its length); null where nothing is.
 */
function texturedPlaces(
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

/** Own figures: crisp along most of the way, enough of it on the sheet. */
const broken = { soft: 0.4, share: 0.02 } as const;

/** Broken, crisp texture in a later wash is dragged on, not drawn shape by shape. */
export const dryBrush: TechniqueDetector = (wash) => {
  const { draft } = wash;
  if (wash.wash < 2 || draft.technique !== 'wet on dry') return null;
  const places = texturedPlaces(wash, broken.share, (soft) => soft < broken.soft);
  if (!places) return null;
  return {
    share: places.share,
    touch: {
      technique: 'dry brush',
      text: fittedNames(
        (shapes) =>
          `For the broken texture of ${shapes}, blot the loaded brush, hold it low and drag it: only the tops of the paper take paint.`,
        places.names,
        ' and ',
      ),
      paper: 'bone dry',
      minutes: null,
    },
  };
};

/** Own figures: soft along a good part of the way, enough of it on the sheet, a shine that can be watched. */
const dropped = { soft: 0.4, share: 0.03, shineMinutes: 2 } as const;

/**
 * Drops of water, as the shine is about to go, win back soft lights in a textured ground (R13); never in a
 * plain area (R21), never over a subject.
 */
export const waterDrops: TechniqueDetector = (wash) => {
  const { draft, passage } = wash;
  if (passage === 'subject' || draft.technique === 'glaze' || draft.technique === 'dry brush') {
    return null;
  }
  if (draft.shineMinutes[1] < dropped.shineMinutes) return null;
  const places = texturedPlaces(wash, dropped.share, (soft) => soft >= dropped.soft);
  if (!places) return null;
  return {
    share: places.share,
    touch: {
      technique: 'water drops',
      text: fittedNames(
        (shapes) =>
          `As the shine is about to go, flick a few drops of clean water on ${shapes}: they open soft lights. Cover the rest.`,
        places.names,
        ' and ',
      ),
      paper: 'satin',
      minutes: asTheShineGoes(draft),
    },
  };
};
