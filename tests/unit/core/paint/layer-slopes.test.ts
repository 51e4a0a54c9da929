import { describe, expect, it } from 'vitest';
import { writeLayerSlopes } from '../../../../app/core/paint/layer-slopes.ts';
import fixture from '../../../fixtures/km-formulas-and-examples.json';

const depths = [0, 1e-12, 1e-6, 1e-4, 0.001, 0.0022, 0.0032, 0.01, 0.1, 0.5, 1, 3, 10, 100, 1000];
const grounds = [0, 0.012, 0.5, 0.86, 0.95];

function slopesOf(kx: number, sx: number, ground: number) {
  const out = new Float64Array(4).fill(7);
  writeLayerSlopes(kx, sx, ground, out, 1);
  expect(out[0]).toBe(7);
  return { r: out[1] as number, alongK: out[2] as number, alongS: out[3] as number };
}

describe('a layer over a ground with its slopes', () => {
  it('has the reflectance of the worked numbers (Kubelka 1948; the equation itself by Runge and Kutta)', () => {
    expect(fixture.computed_two_ways.length).toBeGreaterThan(5);
    for (const { KX, SX, Rg, overGround } of fixture.computed_two_ways) {
      expect(slopesOf(KX, SX, Rg).r).toBeCloseTo(overGround, 8);
    }
  });

  // d/dt of R at depth t X is (S - 2 (K + S) R + S R^2) X, and R depends on KX and SX only.
  it('obeys the equation of Kubelka and Munk: KX dR/dKX + SX dR/dSX = SX - 2 (KX + SX) R + SX R^2', () => {
    for (const kx of depths) {
      for (const sx of depths) {
        for (const ground of grounds) {
          const { r, alongK, alongS } = slopesOf(kx, sx, ground);
          const right = sx - 2 * (kx + sx) * r + sx * r * r;
          expect(Math.abs(kx * alongK + sx * alongS - right)).toBeLessThan(1e-9 * (1 + kx + sx));
          expect(r).toBeGreaterThanOrEqual(-1e-12);
          expect(r).toBeLessThanOrEqual(1);
        }
      }
    }
  });

  it('has the slopes of its own curve, one by one', () => {
    for (const kx of depths) {
      for (const sx of depths) {
        for (const ground of grounds) {
          const { alongK, alongS } = slopesOf(kx, sx, ground);
          const stepK = 1e-5 * Math.max(kx, 1e-3);
          const stepS = 1e-5 * Math.max(sx, 1e-3);
          // One-sided at 0, where the other side does not exist: second order all the same.
          const slope = (along: (step: number) => number, room: boolean, step: number): number =>
            room
              ? (along(step) - along(-step)) / (2 * step)
              : (4 * along(step) - along(2 * step) - 3 * along(0)) / (2 * step);
          const byK = slope((d) => slopesOf(kx + d, sx, ground).r, kx > stepK, stepK);
          const byS = slope((d) => slopesOf(kx, sx + d, ground).r, sx > stepS, stepS);
          expect(Math.abs(alongK - byK), `K ${kx} ${sx} ${ground}`).toBeLessThan(2e-6);
          expect(Math.abs(alongS - byS), `S ${kx} ${sx} ${ground}`).toBeLessThan(2e-6);
        }
      }
    }
  });

  it('without paint it is the ground, without scatter Beer and Lambert', () => {
    for (const ground of grounds) {
      expect(slopesOf(0, 0, ground)).toEqual({
        r: ground,
        alongK: -2 * ground,
        alongS: expect.closeTo((1 - ground) ** 2, 12),
      });
      const { r, alongK } = slopesOf(0.7, 0, ground);
      expect(r).toBeCloseTo(ground * Math.exp(-1.4), 14);
      expect(alongK).toBeCloseTo(-2 * ground * Math.exp(-1.4), 12);
    }
  });
});
