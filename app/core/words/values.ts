import { valueOfLightness } from '../colour/lightness.ts';

/** A Munsell value, 0..10, as it is told: to a tenth. */
export const valueInFigures = (value: number): string => value.toFixed(1);

/** 'value 2.1' of a lightness, L*. */
export const valueInWords = (lightness: number): string =>
  `value ${valueInFigures(valueOfLightness(lightness))}`;
