import { converter } from 'culori';
import type { Lab } from '../../../app/core/colour/lab.ts';

const toLinear = converter('lrgb');
const toLab = converter('lab65');

const held = (light: number): number => Math.max(0, Math.min(1, light));

/** By culori 4.0.2, clipped to 0..1. */
export function linearOfLab([l, a, b]: Lab): readonly [number, number, number] {
  const light = toLinear({ mode: 'lab65', l, a, b });
  return [held(light.r), held(light.g), held(light.b)];
}

/** By culori 4.0.2, D65. */
export function labOfLinear(r: number, g: number, b: number): Lab {
  const lab = toLab({ mode: 'lrgb', r, g, b });
  return [lab.l, lab.a, lab.b];
}
