import type { WashPlan } from '../plan/plan.ts';
import type { PixelSize } from '../raster/size.ts';
import { interestIn } from '../reading/details/centre-of-interest.ts';
import type { Reading } from '../reading/reading.ts';
import { type Advice, type EdgeVerdict, lightnessLimits, type ShapeVerdict } from './comparison.ts';
import { mendShape } from './mend.ts';

/** Nobody mends more than so many things before the next look. */
const mostAdvice = 3;
/** A place is worth a word from this much of the sheet on (own): 1.5 cm2 of a quarter sheet. */
const leastShare = 0.0015;
/** An edge counts as a verge so wide, mm, half as far off in lightness as its sides are apart (own). */
const edgeStripMm = 4;

/** How near a place is to the centre of interest. */
export function nearnessIn(
  { proposedSubject }: Pick<Reading, 'proposedSubject'>,
  { slots }: Pick<WashPlan, 'slots'>,
  slotMap: Uint8Array,
  size: PixelSize,
): (x: number, y: number) => number {
  const hasSubject = slots.some(({ passage }) => passage === 'subject');
  const subject = hasSubject
    ? slotMap.map((slot) => (slots[slot]?.passage === 'subject' ? 1 : 0))
    : null;
  return interestIn(subject, proposedSubject?.path ?? null, size);
}

/**
 * What is worth doing, at most three, what matters most first: by area x difference x nearness to the centre of
 * interest. Empty where all that counts is as planned.
 */
export function advise(
  shapes: readonly ShapeVerdict[],
  edges: readonly EdgeVerdict[],
  { edges: read = [], sheet }: Pick<Reading, 'edges' | 'sheet'>,
  plan: WashPlan,
  upTo: number,
  nearness: (x: number, y: number) => number,
): Advice[] {
  const whole = sheet.widthMm * sheet.heightMm;
  const ofShapes = shapes.flatMap((shape) => {
    const size = Math.abs(shape.difference);
    if (size < lightnessLimits.slight || shape.share < leastShare) return [];
    if (shape.measuredShare < leastShare / 2) return [];
    return [{ shape, weight: shape.share * size * nearness(...shape.at) }];
  });
  const ofEdges = edges.map((edge) => {
    const share = (edge.lengthMm * edgeStripMm) / whole;
    return { edge, share, weight: (share * edge.contrast * nearness(...edge.at)) / 2 };
  });
  return [...ofShapes, ...ofEdges]
    .sort((one, two) => two.weight - one.weight)
    .slice(0, mostAdvice)
    .map((found): Advice => {
      const { weight } = found;
      if ('shape' in found) {
        const { slot, shapes: own, at, share, difference, drift, measured, expected } = found.shape;
        const mended = mendShape(plan, upTo, slot, expected, measured, share * whole);
        return {
          ...mended,
          weight,
          slot,
          shapes: own,
          at,
          share,
          difference,
          drift,
          measured,
          expected,
        };
      }
      const { edge, share } = found;
      const darker = darkerSide(read[edge.edge], plan, upTo);
      const colour = plan.steps[upTo - 1]?.after[darker] ?? plan.paper;
      return {
        mending: edge.came === 'harder' ? 'soften-edge' : 'sharpen-edge',
        weight,
        slot: darker,
        shapes: [],
        edge: edge.edge,
        at: edge.at,
        share,
        difference: 0,
        drift: [],
        measured: colour,
        expected: colour,
        predicted: colour,
      };
    });
}

/** The slot on the darker side of an edge after a step. */
function darkerSide(
  edge: NonNullable<Reading['edges']>[number] | undefined,
  plan: WashPlan,
  upTo: number,
): number {
  if (!edge) return 0;
  const after = plan.steps[upTo - 1]?.after ?? [];
  return (after[edge.a]?.[0] ?? 100) < (after[edge.b]?.[0] ?? 100) ? edge.a : edge.b;
}
