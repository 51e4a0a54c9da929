import { otherSide, wayRound } from '../../reading/edges/slot-borders.ts';
import type { ShapeSaid } from '../../words/plan/names.ts';
import { bothSides, longestNamed, sideOf } from '../edges/wash-edges.ts';
import type { SmallTechnique } from '../plan.ts';
import { type PlanFacts, paintsIn } from '../plan-facts.ts';
import { isTextured, mixesOverSlot } from '../steps/finishing-steps.ts';
import type { StepDraft } from '../steps/step-draft.ts';
import { noBladeBecause } from '../steps/white-steps.ts';
import { slotAt, type TechniqueDetector, type WashInHand } from './technique-proposal.ts';
import { asTheShineGoes, whileDamp } from './wetness-windows.ts';

interface TexturedPlaces {
  /** The two largest, by their colour. */
  readonly names: readonly ShapeSaid[];
  /** Share of the sheet, 0..1. */
  readonly share: number;
}

/**
 * The broken-up slots this wash finishes that cover at least `least` of the sheet each and whose outline softness
 * (share of its length, 0..1) satisfies `isAs`; null where there are none.
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

/** Crisp along most of the way, enough of it on the sheet (own). */
const broken = { soft: 0.4, share: 0.02 } as const;

/** Broken, crisp texture in a later wash is dragged on, not drawn shape by shape. */
export const dryBrush: TechniqueDetector = (wash) => {
  const { draft } = wash;
  if (wash.wash < 2 || draft.technique !== 'wet on dry') return null;
  const places = texturedPlaces(wash, broken.share, (soft) => soft < broken.soft);
  if (!places) return null;
  return {
    share: places.share,
    smallTechnique: {
      technique: 'dry brush',
      text: { say: 'technique/dry-brush', shapes: places.names },
      paper: 'bone dry',
      minutes: null,
    },
  };
};

/** Soft along a good part of the way, enough of it on the sheet, a shine that can be watched (own). */
const dropped = { soft: 0.4, share: 0.03, shineMinutes: 2 } as const;

/**
 * Drops of water, as the shine is about to go, win back soft lights in a textured shape (R13); never in a
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
    smallTechnique: {
      technique: 'water drops',
      text: { say: 'technique/water-drops', shapes: places.names },
      paper: 'satin',
      minutes: asTheShineGoes(draft),
    },
  };
};

/** Small soft lights, mostly inside the darker shape and not far from it in value (own). */
const lifted = { soft: 0.6, inside: 0.5, least: 6, most: 30, lengthMm: 40, small: 3 } as const;

/** Small soft lights inside a shape whose paints all lift are taken out while it is damp (R11). */
export const dampLifting: TechniqueDetector = (wash) => {
  const { facts, draft, finished, painted } = wash;
  if (draft.technique === 'glaze' || draft.technique === 'dry brush') return null;
  const { borders } = facts.reading;
  const found = [...painted].flatMap((light) => {
    const own = slotAt(wash, light);
    if (own.smallShapes < lifted.small) return [];
    const round = wayRound(borders, light);
    return round.borders.flatMap((border) => {
      const dark = otherSide(border, light);
      const around = facts.slots[dark];
      if (!around || !finished.has(dark) || around.share < own.share) return [];
      const lighter = own.target[0] - around.target[0];
      if (lighter < lifted.least || lighter > lifted.most) return [];
      if (border.soft < lifted.soft || border.lengthMm < lifted.lengthMm) return [];
      if (border.lengthMm < lifted.inside * round.lengthMm) return [];
      const paints = paintsIn(facts, mixesOverSlot(facts, dark));
      if (paints.length === 0 || paints.some(({ properties }) => properties.staining !== 0))
        return [];
      return [{ light, dark, lengthMm: border.lengthMm, share: own.share }];
    });
  });
  if (found.length === 0) return null;
  const names = longestNamed(
    found.map(({ light, dark, lengthMm }) => [bothSides(facts, dark, light).one, lengthMm]),
    2,
  );
  return {
    share: found.reduce((sum, { share }) => sum + share, 0),
    smallTechnique: {
      technique: 'lifting',
      text: { say: 'technique/lifting', shapes: names },
      paper: 'damp',
      minutes: whileDamp(draft),
    },
  };
};

/** Whites that come back last can be scraped out, where a blade may come near the sheet. */
export function scraping(
  facts: PlanFacts,
  { technique }: StepDraft,
  lights: number,
): SmallTechnique[] {
  if (lights === 0 || technique === 'scraping' || noBladeBecause(facts)) return [];
  return [
    {
      technique: 'scraping',
      text: { say: 'technique/scraping' },
      paper: 'bone dry',
      minutes: null,
    },
  ];
}
