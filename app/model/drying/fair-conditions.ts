import type { Weather } from './weather.ts';
import { roomWeather } from './weather.ts';

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
export function fairConditions(conditions: DryingConditions): DryingConditions {
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
