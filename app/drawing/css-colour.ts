import type { Lab } from '../model/lab.ts';
import { labToRgb } from './lab-to-rgb.ts';

/** A CSS colour for a Lab colour (D65), clipped to sRGB. */
export function cssColour(lab: Lab): string {
  const [red, green, blue] = labToRgb(lab);
  return `rgb(${red} ${green} ${blue})`;
}

/** The neutral grey of a lightness, L* 0..100. */
export const cssGrey = (lightness: number): string => cssColour([lightness, 0, 0]);
