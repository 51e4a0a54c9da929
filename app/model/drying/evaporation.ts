import type { Weather } from '../wash-plan.ts';
import { vapourPressure } from './vapour-pressure.ts';

const pressure = 101325; // Pa
const heatOfAir = 1006; // J/kg K
const lewis = 0.91; // Le^(2/3) of water vapour in air, Le about 0.87
const emissivity = 0.95;
const stefanBoltzmann = 5.67e-8; // W/m2 K4
/** Heat through a 6 mm wooden board open behind, W/m2 K (own estimate). */
const board = 5.7;

export interface Evaporation {
  /** Grams of water per square metre and hour. */
  readonly gramsPerSquareMetreHour: number;
  /** Temperature of the wet face, degrees Celsius. */
  readonly celsius: number;
}

/**
 * Heat carried by the air, W/m2 K. Forced: own fit to the flat-plate laws of the VDI Heat Atlas for
 * a sheet of 380 mm. Still air over a cooled face: Nu ~ Ra^(1/5), same source (from memory).
 */
function airHeat(airSpeed: number, coolerBy: number): number {
  return Math.cbrt((1.4 * Math.abs(coolerBy) ** 0.2) ** 3 + (9.9 * airSpeed ** 0.63) ** 3);
}

/** Heat of evaporation of water, J/kg (linear, from memory). */
const heatOfEvaporation = (celsius: number): number => 2.501e6 - 2370 * celsius;

function atSurface(weather: Weather, activity: number, surface: number) {
  const { celsius, humidity, airSpeed } = weather;
  const air = airHeat(airSpeed, celsius - surface);
  const kelvin = (celsius + surface) / 2 + 273.15;
  const heat = air + 4 * emissivity * stefanBoltzmann * kelvin ** 3 + board;
  const perPascal = (air * 0.622) / (pressure * heatOfAir * lewis);
  const vapour = activity * vapourPressure(surface) - (vapourPressure(celsius) * humidity) / 100;
  const flux = perPascal * vapour; // kg/m2 s
  return { flux, surplus: heat * (celsius - surface) - heatOfEvaporation(surface) * flux };
}

/**
 * How fast a thin wash dries, at the temperature where the heat it draws balances the heat it needs:
 * a thin wash is no pool, it cools below the air but never down to the wet bulb.
 * `activity` 0..1 is 1 for open water. Humidity 0..100, airSpeed m/s. Penman's balance (H. L. Penman,
 * 'Natural evaporation from open water, bare soil and grass', 1948), solved by halving.
 */
export function evaporationOf(weather: Weather, activity = 1): Evaporation {
  let low = weather.celsius - 40;
  let high = weather.celsius + 10; // warmer than the air where dry fibre takes water up
  for (let i = 0; i < 34; i++) {
    const middle = (low + high) / 2;
    if (atSurface(weather, activity, middle).surplus > 0) low = middle;
    else high = middle;
  }
  const celsius = (low + high) / 2;
  return {
    gramsPerSquareMetreHour: atSurface(weather, activity, celsius).flux * 3.6e6,
    celsius,
  };
}
