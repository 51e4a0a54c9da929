import type { Lab } from '../../../app/model/lab.ts';
import { luminanceOf } from './set-luminance.ts';

// XYZ to linear sRGB, and the white of the same primaries: CSS Color 4, 10.1 (D65 of x 0.3127, y 0.3290).
const redOf = [3.2409699419045226, -1.537383177570094, -0.4986107602930034] as const;
const greenOf = [-0.9692436362808796, 1.8759675015077202, 0.0415550574071756] as const;
const blueOf = [0.0556300796969936, -0.2039769588889765, 1.0569715142428786] as const;
const whiteX = 0.3127 / 0.329;
const whiteZ = (1 - 0.3127 - 0.329) / 0.329;

const joint = 6 / 29;
const undone = (f: number): number => (f > joint ? f * f * f : 3 * joint * joint * (f - 4 / 29));

/**
 * Linear light 0..1 of a colour (L* 0..100, a*, b*; ISO/CIE 11664-4). Colours a screen can't hold are
 * drawn to grey of the same lightness.
 */
export function linearOfLab([lightness, a, b]: Lab): readonly [number, number, number] {
  const fy = (lightness + 16) / 116;
  const x = whiteX * undone(fy + a / 500);
  const y = luminanceOf(lightness);
  const z = whiteZ * undone(fy - b / 200);
  const r = redOf[0] * x + redOf[1] * y + redOf[2] * z - y;
  const g = greenOf[0] * x + greenOf[1] * y + greenOf[2] * z - y;
  const c = blueOf[0] * x + blueOf[1] * y + blueOf[2] * z - y;
  const over = Math.max(r, g, c);
  const under = -Math.min(r, g, c);
  let colour = 1;
  if (over > 1 - y) colour = Math.min(colour, (1 - y) / over);
  if (under > y) colour = Math.min(colour, y / under);
  const held = (own: number): number => Math.max(0, Math.min(1, y + colour * own));
  return [held(r), held(g), held(c)];
}
