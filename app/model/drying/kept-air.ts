import { fairConditions } from './fair-conditions.ts';
import { type PaperChoice, usualPaper } from './paper-choice.ts';
import { roomWeather, type Weather } from './weather.ts';

/** The air she paints in and her paper, as set last: the next session begins with it. */
export interface KeptAir {
  readonly schema: 1;
  readonly weather: Weather;
  readonly paper: PaperChoice;
}

export const usualAir: KeptAir = { schema: 1, weather: roomWeather, paper: usualPaper };

const hasFields = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

const figure = (value: unknown): number => (typeof value === 'number' ? value : Number.NaN);

/** What was kept, made whole: what is missing or is none counts as usual. Null where nothing was kept. */
export function keptAirOf(value: unknown): KeptAir | null {
  if (!hasFields(value) || value.schema !== 1 || !hasFields(value.weather)) return null;
  const { celsius, humidity, airSpeed, sunWatts, backing, hairDryer } = value.weather;
  const paper = hasFields(value.paper) ? value.paper : {};
  const fair = fairConditions({
    waterGramsPerSquareMetre: 0,
    paperGsm: figure(paper.gsm),
    weather: {
      celsius: figure(celsius),
      humidity: figure(humidity),
      airSpeed: figure(airSpeed),
      sunWatts: figure(sunWatts),
      backing: backing === 'block' || backing === 'wet' ? backing : 'board',
      hairDryer: hairDryer === true,
    },
  });
  const fibre = paper.fibre === 'cellulose' ? 'cellulose' : 'cotton';
  return { schema: 1, weather: fair.weather, paper: { gsm: fair.paperGsm, fibre } };
}
