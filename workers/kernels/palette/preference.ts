import type { Paint } from '../../../app/model/paint.ts';

/** Own weights: opaque paint dulls a glaze, a mixed tube muddies, a metal asks for care. */
const opacity = { T: 0, ST: 0.5, SO: 1.5, O: 2 } as const;
const unknown = 1;
const caution = 1;
const eachPigmentMore = 1;

/**
 * What speaks against paints, all else being equal: opaque ones, tubes of several pigments, those to be
 * handled with care. 0 for single transparent pigments without a caution.
 */
export const againstPaints = (paints: readonly Paint[]): number =>
  paints.reduce((sum, { ci, properties }) => {
    const opaque = properties.transparency ? opacity[properties.transparency] : unknown;
    return sum + opaque + eachPigmentMore * (ci.length - 1) + (properties.caution ? caution : 0);
  }, 0);

/** How much paints granulate, 0..2 each, on average: 0 where nobody knows. */
export const granulationOf = (paints: readonly Paint[]): number =>
  paints.reduce((sum, { properties }) => sum + (properties.granulation ?? 0), 0) /
  Math.max(1, paints.length);
