import { vapourPressure } from '../../../app/core/drying/evaporation.ts';
import type { Weather } from '../../../app/core/drying/weather.ts';

/**
 * The same rate without halving: Penman's closed form, grams per square metre and hour, open water.
 * Within 10 % from 10 to 25 C and up to 1 m/s; the independent check of `evaporationOf`.
 * Source: H. L. Penman 1948; coefficients as own estimates for a sheet on a wooden board.
 */
export function penmanRate({ celsius, humidity, airSpeed }: Weather): number {
  const air = Math.cbrt(1.8 ** 3 + (9.9 * airSpeed ** 0.63) ** 3);
  const heat = air + 5.4 + 5.7;
  const perPascal = (air * 0.622) / (101325 * 1006 * 0.91);
  const slope = (vapourPressure(celsius + 0.05) - vapourPressure(celsius - 0.05)) / 0.1;
  const deficit = vapourPressure(celsius) * (1 - humidity / 100);
  return (3.6e6 * perPascal * deficit) / (1 + (perPascal * slope * 2.45e6) / heat);
}
