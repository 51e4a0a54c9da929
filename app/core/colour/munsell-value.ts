// ASTM D1535: luminance factor Y (percent, perfect diffuser = 100) as a quintic in Munsell value V.
const C = [1.1914, -0.22533, 0.23352, -0.020484, 0.00081939] as const;

/** Luminance factor in percent of a Munsell value 0..10. Source: ASTM D1535. */
export function luminanceOfValue(value: number): number {
  const v = value;
  return v * (C[0] + v * (C[1] + v * (C[2] + v * (C[3] + v * C[4]))));
}

/** Luminance factor in percent of a CIE L* 0..100 (CIE 15). */
export function luminanceOfLightness(lightness: number): number {
  const f = (lightness + 16) / 116;
  return lightness > 8 ? 100 * f ** 3 : (lightness * 2700) / 24389;
}

/** CIE L* 0..100 of a Munsell value 0..10. Sources: ASTM D1535, CIE 15. */
export function lightnessOfValue(value: number): number {
  const y = luminanceOfValue(Math.min(10, Math.max(0, value))) / 100;
  return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (y * 24389) / 27;
}

/**
 * Munsell value 0..10 (10 is white) of a CIE L*. The standard gives no inverse; the quintic rises
 * throughout, so halving finds it to 1e-9. Source: ASTM D1535.
 */
export function valueOfLightness(lightness: number): number {
  const wanted = luminanceOfLightness(Math.min(100, Math.max(0, lightness)));
  let low = 0;
  let high = 10;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (luminanceOfValue(middle) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
