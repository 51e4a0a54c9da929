/**
 * What the paper is like, from wettest to driest. Codes 5..0 as in common teaching
 * (common practice, no source for the exact borders).
 */
export const wetnesses = ['flooded', 'shiny', 'satin', 'damp', 'almost dry', 'bone dry'] as const;
export type Wetness = (typeof wetnesses)[number];
