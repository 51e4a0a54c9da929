import { vapourPressure } from '../../../app/core/drying/evaporation.ts';

const airPressure = 101325;

/** Psychrometer equation, WMO No. 8 (from memory), solved by halving: degrees Celsius. */
export function wetBulb(celsius: number, humidity: number): number {
  const vapour = (vapourPressure(celsius) * humidity) / 100;
  let low = -20;
  let high = celsius;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const per = 6.62e-4 * airPressure * (1 + 0.00115 * middle);
    if (vapourPressure(middle) - per * (celsius - middle) < vapour) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Where the air would be full: degrees Celsius. */
export function dewPoint(celsius: number, humidity: number): number {
  const vapour = (vapourPressure(celsius) * humidity) / 100;
  let low = -20;
  let high = celsius;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (vapourPressure(middle) < vapour) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Grams of water a kilogram of dry air carries. */
export function humidityRatio(celsius: number, humidity: number): number {
  const vapour = (vapourPressure(celsius) * humidity) / 100;
  return (621.945 * vapour) / (airPressure - vapour);
}
