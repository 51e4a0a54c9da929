import { describe, expect, it } from 'vitest';
import { layOver, paintLayer } from '../../../../workers/kernels/optics/paint-layer.ts';
import { bandCount } from '../../../../workers/kernels/optics/wavelengths.ts';

/**
 * R at the top of a layer by the differential equation itself, dR/dX = S - 2 (K + S) R + S R^2,
 * R(0) = Rg: Kubelka and Munk (1931). Classical Runge-Kutta of fourth order, 4000 steps.
 */
function integrated(kx: number, sx: number, ground: number): number {
  const slope = (r: number): number => sx - 2 * (kx + sx) * r + sx * r * r;
  const steps = 4000;
  const h = 1 / steps;
  let r = ground;
  for (let n = 0; n < steps; n++) {
    const k1 = slope(r);
    const k2 = slope(r + (h * k1) / 2);
    const k3 = slope(r + (h * k2) / 2);
    const k4 = slope(r + h * k3);
    r += (h * (k1 + 2 * k2 + 2 * k3 + k4)) / 6;
  }
  return r;
}

describe('closed form against the differential equation', () => {
  for (const kx of [0, 0.01, 0.3, 2, 10]) {
    for (const sx of [0, 0.02, 0.5, 3, 12]) {
      it(`KX ${kx}, SX ${sx}: within 1e-9 over every ground`, () => {
        const layer = paintLayer(
          new Float64Array(bandCount).fill(kx),
          new Float64Array(bandCount).fill(sx),
          1,
        );
        for (const ground of [0, 0.012, 0.4, 0.85, 1]) {
          const paper = new Float64Array(bandCount).fill(ground);
          const [closed] = layOver(layer, paper, new Float64Array(bandCount));
          expect(Math.abs((closed as number) - integrated(kx, sx, ground))).toBeLessThan(1e-9);
        }
      });
    }
  }
});
