import { type PaperChoice, usualPaper } from './paper-choice.ts';
import { roomWeather, type Weather } from './weather.ts';

export interface DryingConditions {
  /** Water put down, g per square metre of wet paper: 20 a thin glaze, 40 a flat wash, 150 pre-wetted. */
  readonly waterGramsPerSquareMetre: number;
  readonly weather: Weather;
  /** Weight of the paper, g/m2. */
  readonly paperGsm: number;
}

function within(value: number, low: number, high: number, otherwise: number): number {
  return Number.isNaN(value) ? otherwise : Math.min(high, Math.max(low, value));
}

/**
 * The conditions brought to where the model holds, so that every answer is a finite number: in
 * saturated air nothing dries, the moisture of paper is known from 20 % humidity up, and no one
 * paints below freezing. What is missing is an ordinary room.
 */
export function clampConditions(conditions: DryingConditions): DryingConditions {
  const { weather } = conditions;
  return {
    waterGramsPerSquareMetre: within(conditions.waterGramsPerSquareMetre, 0, 1000, 0),
    paperGsm: within(conditions.paperGsm, 60, 1200, 300),
    weather: {
      ...weather,
      sunWatts: within(weather.sunWatts ?? 0, 0, 1100, 0),
      celsius: within(weather.celsius, 1, 50, roomWeather.celsius),
      humidity: within(weather.humidity, 20, 97, roomWeather.humidity),
      airSpeed: within(weather.airSpeed, 0.05, 10, roomWeather.airSpeed),
    },
  };
}

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
export function parseKeptAir(value: unknown): KeptAir | null {
  if (!hasFields(value) || value.schema !== 1 || !hasFields(value.weather)) return null;
  const { celsius, humidity, airSpeed, sunWatts, backing, hairDryer } = value.weather;
  const paper = hasFields(value.paper) ? value.paper : {};
  const fair = clampConditions({
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
