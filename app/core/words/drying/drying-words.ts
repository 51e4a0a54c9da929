import type { DryingClockName, Pace } from '../../drying/learn-pace.ts';
import type { PaperChoice } from '../../drying/paper-choice.ts';
import type { WaterKind } from '../../drying/water.ts';
import { airs, chosenOf, coolTestWorks, type Weather } from '../../drying/weather.ts';
import type { Wetness } from '../../drying/wetness.ts';
import { capitalize, formatCount } from '../numbers.ts';
import { warmthInWords } from '../units.ts';

const does = { shine: 'lose their shine', dry: 'get bone dry' } as const;

/** What was learned of one clock for one kind of wash, as a sentence; null before the first tap. */
export function paceInWords(clock: DryingClockName, wash: WaterKind, pace: Pace): string | null {
  if (pace.taps === 0) return null;
  const subject = capitalize(waterWords[wash]);
  return `${subject} ${does[clock]} ${speedWords(pace.factor)}, from ${formatCount(pace.taps, 'tap')}.`;
}

function speedWords(factor: number): string {
  const times = (n: number): string => (Math.round(n * 10) / 10).toString();
  if (factor > 1.05) return `in ${times(factor)} times the time reckoned`;
  if (factor < 0.95) return `${times(1 / factor)} times as fast as reckoned`;
  return 'as reckoned';
}

/** How each kind is called on screen. */
export const waterWords: Record<WaterKind, string> = {
  accents: 'small dark touches',
  details: 'details',
  splatter: 'splatter',
  lift: 'lifting',
  glaze: 'thin glazes',
  stroke: 'later washes on dry paper',
  wash: 'first washes on dry paper',
  wetInWet: 'wet-in-wet washes',
};

/** '20°C (68°F), 50 % humidity, still air (0.15 m/s), sun, on a board': what is set, in a line. */
export function airInWords(weather: Weather): string {
  const { celsius, humidity, airSpeed, sunWatts = 0, backing = 'board', hairDryer } = weather;
  return [
    warmthInWords(celsius),
    `${humidity} % humidity`,
    `${airWords(airSpeed)} (${airSpeed} m/s)`,
    ...(sunWatts > 0 ? ['sun'] : []),
    backingWords[backing],
    ...(hairDryer ? ['hair dryer'] : []),
  ].join(', ');
}

/** A speed between the choices is said by its figure alone. */
function airWords(airSpeed: number): string {
  const chosen = chosenOf(airs, airSpeed);
  if (chosen === 'still' || chosen === 'airy')
    return `${chosen === 'still' ? 'still' : 'moving'} air`;
  return chosen ?? 'air';
}

export const backingWords = {
  board: 'on a board',
  block: 'on the block',
  wet: 'wet underneath',
} as const;

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

export const paperInWords = ({ gsm, fibre }: PaperChoice): string => `${fibre}, ${gsm} g/m²`;
