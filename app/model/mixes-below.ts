import type { LaidMix } from './mix-neighbour.ts';
import type { Mix, WashPlan } from './wash-plan.ts';

/** The washes that lie dry under a mix when it is laid, first one first. */
export const mixesBelow = ({ mixes }: Pick<WashPlan, 'mixes'>, mix: Mix): LaidMix[] =>
  mixes
    .filter(
      ({ passage, family, wash, parts }) =>
        passage === mix.passage && family === mix.family && wash < mix.wash && parts.length > 0,
    )
    .sort((one, two) => one.wash - two.wash)
    .map(({ parts, load }) => ({ parts, load }));
