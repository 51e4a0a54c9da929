import { mostNegativeRounds } from '../../limits.ts';
import { otherSide, wayRound } from '../../reading/edges/slot-borders.ts';
import type { Said } from '../../words/plan/words.ts';
import { bothSides, longestNamed } from '../edges/wash-edges.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { passageOrder } from '../steps/passage-order.ts';
import {
  slotAt,
  type TechniqueDetector,
  type TechniqueProposal,
  type WashInHand,
} from './technique-proposal.ts';

/** Plainly darker along most of the way round, mostly hard, few and compact shapes (own). */
const cut = { contrast: 10, round: 0.7, soft: 0.4, mm2: 150, small: 0.6, share: 0.002 } as const;

interface CutRound {
  readonly light: number;
  readonly dark: number;
  readonly lengthMm: number;
}

/** Lighter shapes a wash on dry paper is cut round. */
function cutRound(
  { reading, slots }: Pick<PlanFacts, 'reading' | 'slots'>,
  painted: ReadonlySet<number>,
  passage: string,
): CutRound[] {
  return [...slots.keys()].flatMap((light): CutRound[] => {
    const own = slots[light];
    if (!own || painted.has(light) || own.passage !== passage || own.share < cut.share) return [];
    if (own.largestMm2 < cut.mm2 || own.smallShapes > cut.small * own.shapes) return [];
    const round = wayRound(reading.borders, light);
    if (round.lengthMm <= 0 || round.soft > cut.soft) return [];
    const dark = round.borders
      .filter((border) => {
        const other = otherSide(border, light);
        const darker = own.target[0] - (slots[other]?.target[0] ?? 100);
        return painted.has(other) && darker >= cut.contrast;
      })
      .sort((one, other) => other.lengthMm - one.lengthMm);
    const lengthMm = dark.reduce((sum, border) => sum + border.lengthMm, 0);
    const around = dark.reduce(
      (sum, border) => sum + (slots[otherSide(border, light)]?.share ?? 0),
      0,
    );
    const [longest] = dark;
    if (!longest || lengthMm < cut.round * round.lengthMm || around <= own.share) return [];
    return [{ light, dark: otherSide(longest, light), lengthMm }];
  });
}

/** Number of rounds of negative painting in the passage's earlier washes. */
function roundsBefore({ facts, passage, wash }: WashInHand): number {
  const washes = facts.passages.find((one) => one.passage === passage)?.washes ?? [];
  return washes.filter(
    (one) =>
      one.wash > 1 && one.wash < wash && cutRound(facts, new Set(one.slots), passage).length > 0,
  ).length;
}

const proposalOf = (share: number, text: Said): TechniqueProposal => ({
  share,
  smallTechnique: { technique: 'negative painting', text, paper: 'bone dry', minutes: null },
});

/** The first wash of a darker ground after a lighter subject, on dry paper. */
function roundSubject(wash: WashInHand): TechniqueProposal | null {
  if (wash.wash !== 1 || wash.passage !== 'ground' || !passageOrder(wash.facts).cutRound)
    return null;
  const share = wash.facts.slots.reduce(
    (sum, slot) => (slot.passage === 'subject' ? sum + slot.share : sum),
    0,
  );
  return proposalOf(share, { say: 'technique/round-subject' });
}

/** The dark is painted round a lighter shape, which it makes (R20). */
export const negativePainting: TechniqueDetector = (wash) => {
  const { facts, draft, passage, painted } = wash;
  if (draft.paper !== 'bone dry' || draft.technique === 'dry brush') return null;
  if (wash.wash === 1) return roundSubject(wash);
  const shapes = cutRound(facts, painted, passage);
  if (shapes.length === 0 || roundsBefore(wash) >= mostNegativeRounds) return null;
  const names = longestNamed(
    shapes.map(({ light, dark, lengthMm }) => [bothSides(facts, light, dark).one, lengthMm]),
    3,
  );
  return proposalOf(
    shapes.reduce((sum, { light }) => sum + slotAt(wash, light).share, 0),
    { say: 'technique/round-light', shapes: names },
  );
};
