import { coolTestWorks, type Weather } from './weather.ts';

/** What tells her that the sheet is bone dry, in the air she paints in. */
export function boneDrySign(weather: Weather): string {
  if (coolTestWorks(weather)) return `Bone dry: ${wetnessSign['bone dry']}.`;
  return `${slowAir} Bone dry: as pale as a dry scrap of the same wash, and the sheet lies flat.`;
}

/** Own computation: in such air a wet sheet is hardly cooler than a dry one. */
export const slowAir =
  'In air this damp or cold a wash takes hours, and the back of the hand tells nothing.';

/** What a drying check asks of her: where the hand can tell, and where it can't. Rule R7. */
export const dryPrompt = {
  usual:
    'Leave it alone until no shine shows, the back of your hand feels no coolness and the sheet lies flat.',
  slow: 'Leave it alone until it is as pale as a dry scrap of it. In this air the back of the hand tells nothing: give it time.',
} as const;

/** Once the shine has gone and the sheet is still cool. Rule R7. */
export const leaveIt =
  'Shine gone, still cool: leave it. No water, no brush, until it is bone dry.';

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

/** The same as one says it in passing. */
export const wetnessShort: Record<Wetness, string> = {
  flooded: 'standing in water',
  shiny: 'shiny',
  satin: 'losing its shine',
  damp: 'dull and cool',
  'almost dry': 'almost dry',
  'bone dry': 'bone dry',
};
