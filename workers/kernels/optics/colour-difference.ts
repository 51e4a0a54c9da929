import type { Lab } from '../../../app/model/lab.ts';

const degree = Math.PI / 180;
const power25to7 = 25 ** 7;

/** Hue angle in radians, 0..2 pi; 0 for a grey. */
function hueOf(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const h = Math.atan2(b, a);
  return h < 0 ? h + 2 * Math.PI : h;
}

/**
 * CIEDE2000 with kL = kC = kH = 1 between two CIE Lab colours. ISO/CIE 11664-6; written after Sharma,
 * Wu, Dalal (2005), Color Res. Appl. 30, 21-30. Symmetric, 0 for equal colours. At exactly opposite
 * hues the formula jumps by its own definition: rank only near colours by it.
 */
export function colourDifference(one: Lab, two: Lab): number {
  return differenceOf(one[0], one[1], one[2], two[0], two[1], two[2]);
}

/** The same on bare numbers, for loops that must not allocate. */
export function differenceOf(
  l1: number,
  a1: number,
  b1: number,
  l2: number,
  a2: number,
  b2: number,
): number {
  const meanC = (Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2;
  const c7 = meanC ** 7;
  const g = 1.5 - 0.5 * Math.sqrt(c7 / (c7 + power25to7));
  const x1 = a1 * g;
  const x2 = a2 * g;
  const c1 = Math.sqrt(x1 * x1 + b1 * b1);
  const c2 = Math.sqrt(x2 * x2 + b2 * b2);
  const h1 = hueOf(x1, b1);
  const h2 = hueOf(x2, b2);
  const grey = c1 * c2 === 0;

  let turn = 0;
  let meanH = h1 + h2;
  if (!grey) {
    turn = h2 - h1;
    const wide = Math.abs(turn) > Math.PI;
    if (wide) turn += turn > 0 ? -2 * Math.PI : 2 * Math.PI;
    if (wide) meanH += meanH < 2 * Math.PI ? 2 * Math.PI : -2 * Math.PI;
    meanH /= 2;
  }
  const dL = l2 - l1;
  const dC = c2 - c1;
  const dH = 2 * Math.sqrt(c1 * c2) * Math.sin(turn / 2);

  const fromMid = ((l1 + l2) / 2 - 50) ** 2;
  const meanC2 = (c1 + c2) / 2;
  const t =
    1 -
    0.17 * Math.cos(meanH - 30 * degree) +
    0.24 * Math.cos(2 * meanH) +
    0.32 * Math.cos(3 * meanH + 6 * degree) -
    0.2 * Math.cos(4 * meanH - 63 * degree);
  const sL = 1 + (0.015 * fromMid) / Math.sqrt(20 + fromMid);
  const sC = 1 + 0.045 * meanC2;
  const sH = 1 + 0.015 * meanC2 * t;
  const p7 = meanC2 ** 7;
  const blue = 30 * degree * Math.exp(-(((meanH / degree - 275) / 25) ** 2));
  const rT = -2 * Math.sqrt(p7 / (p7 + power25to7)) * Math.sin(2 * blue);
  const l = dL / sL;
  const c = dC / sC;
  const h = dH / sH;
  return Math.sqrt(Math.max(0, l * l + c * c + h * h + rT * c * h));
}
