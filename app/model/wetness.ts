/**
 * What the paper is like, from wettest to driest. Codes 5..0 as in common teaching
 * (common practice, no source for the exact borders).
 */
export const wetnesses = ['flooded', 'shiny', 'satin', 'damp', 'almost dry', 'bone dry'] as const;
export type Wetness = (typeof wetnesses)[number];

/** The sign she can see or feel. */
export const wetnessSign: Record<Wetness, string> = {
  flooded: 'puddles stand and run when you tilt the board',
  shiny: 'an even mirror shine',
  satin: 'a soft sheen, the grain of the paper shows',
  damp: 'no shine, still darker than dry, cool to the back of the hand',
  'almost dry': 'pale, a little cool',
  'bone dry': 'looks like untouched paper, flat, no coolness on the back of the hand',
};
