/** The air she paints in and what lies under the sheet. */
export interface Weather {
  readonly celsius: number;
  /** Relative humidity, 0..100. */
  readonly humidity: number;
  /** Air speed over the sheet, m/s. */
  readonly airSpeed: number;
  /** Sunshine falling on the sheet, W/m2; none when left out. */
  readonly sunWatts?: number;
  /** What it lies on: a board open behind when left out. */
  readonly backing?: Backing;
  /** A hair dryer is swept over it once the shine has gone. */
  readonly hairDryer?: boolean;
}

/** block: a glued pad or foam behind the sheet. wet: the sheet was soaked and is wet underneath. */
export type Backing = 'board' | 'block' | 'wet';

export const roomWeather: Weather = { celsius: 20, humidity: 50, airSpeed: 0.15 };

/** A few plain words for what a thermometer and a hygrometer would say (own). */
export const warmths = [
  ['cold', 'Cold', 10],
  ['cool', 'Cool', 16],
  ['usual', 'Usual', 20],
  ['warm', 'Warm', 25],
  ['hot', 'Hot', 32],
] as const;

export const humidities = [
  ['dry', 'Dry', 35],
  ['usual', 'Usual', 50],
  ['damp', 'Damp', 70],
  ['soaking', 'Fog', 92],
] as const;

/** Air speed, m/s: a still room, an airy one, a fan or sheltered outdoors, a breeze, wind (own). */
export const airs = [
  ['still', 'Still', 0.15],
  ['airy', 'Airy', 0.5],
  ['fan', 'Fan', 1],
  ['breeze', 'Breeze', 2],
  ['wind', 'Wind', 3],
] as const;

/** Clear midday sun on a flat sheet, W/m2 (from memory: 600 to 1000). */
export const sunshine = 600;

type Choices = readonly (readonly [string, string, number])[];

/** The choice that stands for a figure; null where she gave another. */
export const chosenOf = (choices: Choices, figure: number): string | null =>
  choices.find(([, , value]) => value === figure)?.[0] ?? null;

export const figureOf = (choices: Choices, chosen: string): number =>
  choices.find(([name]) => name === chosen)?.[2] ?? Number.NaN;

/**
 * Whether the back of the hand can tell damp from dry: in humid or cold air a wet sheet is hardly
 * cooler than a dry one (own computation: 0.5 to 0.8 K). Time and colour have to tell instead.
 */
export function coolTestWorks(weather: Weather): boolean {
  return !(weather.humidity > 85 || weather.celsius < 8);
}
