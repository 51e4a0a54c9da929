import { findRoot } from '../numeric/solve.ts';
import type { Weather } from './weather.ts';

/**
 * Saturation vapour pressure over water in Pa; celsius in degrees, good from 0 to 60.
 * Source: A. L. Buck, 'New equations for computing vapor pressure and enhancement factor', 1981,
 * in the coefficients of his 1996 manual (from memory; held against a published table in the tests).
 */
export function vapourPressure(celsius: number): number {
  return 611.21 * Math.exp(((18.678 - celsius / 234.5) * celsius) / (257.14 + celsius));
}

const pressure = 101325; // Pa: the standard atmosphere (ISO 2533)
const heatOfAir = 1006; // J/kg K, dry air near 20 C (from memory)
const lewis = 0.91; // Le^(2/3) of water vapour in air, Le about 0.87 (from memory)
const emissivity = 0.95; // of wet paper in the infrared (from memory)
const stefanBoltzmann = 5.67e-8; // W/m2 K4 (CODATA 2018, rounded)
/** Heat through what is behind the sheet, W/m2 K: a 6 mm wooden board, a pad or foam (own estimates). */
const heatBehind = { board: 5.7, block: 1, wet: 5.7 } as const;
/** Share of the sunshine that wet white paper takes up (guess). */
const sunTaken = 0.25;
/**
 * A hair dryer at the paper: on its cool setting: air of the room warmed to 35 C at 2 m/s (guess), over one spot of 15 cm,
 * of which a quarter sheet has about six (own estimate).
 */
const dryer = { celsius: 35, airSpeed: 2, share: 1 / 6 } as const;

interface Evaporation {
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
  const { celsius, humidity, airSpeed, sunWatts = 0, backing = 'board' } = weather;
  const air = airHeat(airSpeed, celsius - surface);
  const kelvin = (celsius + surface) / 2 + 273.15;
  const heat = air + 4 * emissivity * stefanBoltzmann * kelvin ** 3 + heatBehind[backing];
  const perPascal = (air * 0.622) / (pressure * heatOfAir * lewis);
  const vapour = activity * vapourPressure(surface) - (vapourPressure(celsius) * humidity) / 100;
  const flux = perPascal * vapour; // kg/m2 s
  const gained = heat * (celsius - surface) + sunTaken * sunWatts;
  return { flux, surplus: gained - heatOfEvaporation(surface) * flux };
}

/**
 * How fast a thin wash dries, at the temperature where the heat it draws balances the heat it needs:
 * a thin wash is no pool, it cools below the air but never down to the wet bulb.
 * `activity` 0..1 is 1 for open water. Humidity 0..100, airSpeed m/s. Penman's balance (H. L. Penman,
 * 'Natural evaporation from open water, bare soil and grass', 1948), solved step by step. Under a hair
 * dryer: the mean of the spot it is on and the rest of the sheet; the temperature is that of the rest.
 */
export function evaporationOf(weather: Weather, activity = 1): Evaporation {
  const still = balance(weather, activity);
  if (!weather.hairDryer) return still;
  const { celsius, airSpeed, share } = dryer;
  // Warming takes no water out of the air: the same vapour, a lower relative humidity.
  const humidity = (weather.humidity * vapourPressure(weather.celsius)) / vapourPressure(celsius);
  const blown = balance({ ...weather, celsius, humidity, airSpeed }, activity);
  const gramsPerSquareMetreHour =
    still.gramsPerSquareMetreHour * (1 - share) + blown.gramsPerSquareMetreHour * share;
  return { ...still, gramsPerSquareMetreHour };
}

function balance(weather: Weather, activity: number): Evaporation {
  const surplus = (celsius: number): number => atSurface(weather, activity, celsius).surplus;
  // Warmer than the air in the sun, or where dry fibre takes water up.
  const celsius = findRoot(surplus, weather.celsius - 40, weather.celsius + 40);
  return {
    gramsPerSquareMetreHour: atSurface(weather, activity, celsius).flux * 3.6e6,
    celsius,
  };
}
