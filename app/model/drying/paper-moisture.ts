// GAB sorption isotherm of paper: Vieira & Rocha, Braz. J. Chem. Eng. 25(2), 2008, find that it fits
// handmade paper; the three coefficients are fitted to moisture figures from memory.
const monolayer = 0.04;
const C = 15;
const K = 0.8;

/** Grams of water a gram of dry fibre holds in air of that water activity, 0..1 (0.5 = 50 % humidity). */
export function moistureOf(activity: number): number {
  const x = K * activity;
  return (monolayer * C * x) / ((1 - x) * (1 - x + C * x));
}

/** Fibre wetter than this dries like open water. */
export const openWaterMoisture = moistureOf(1);

/** Water activity 0..1 over fibre with that much water, g per g: the inverse of `moistureOf`. */
export function activityOf(moisture: number): number {
  if (moisture >= openWaterMoisture) return 1;
  if (moisture <= 0) return 0;
  // X (1-x)(1-x+Cx) = Xm C x is a square in x: X(1-C) x^2 + (X(C-2) - Xm C) x + X = 0.
  const a = moisture * (1 - C);
  const b = moisture * (C - 2) - monolayer * C;
  const x = (-b - Math.sqrt(b * b - 4 * a * moisture)) / (2 * a);
  return Math.min(1, Math.max(0, x / K));
}
