import { describe, expect, it } from 'vitest';
import {
  inside,
  outside,
  type Surface,
  slopeOfOutside,
} from '../../../../app/core/colour/surface.ts';

const app: Surface = { k1: 0.025, k2: 0.6 };
const measured: Surface = { k1: 0.016, k2: 0.6 };
const floor: Surface = { k1: 0.03, k2: 0 };
const surfaces = [app, measured, floor, { k1: 0, k2: 0 }, { k1: 0.04, k2: 0.4 }];
const steps = Array.from({ length: 101 }, (_, i) => i / 100);

// Source: Saunderson, J. L., Calculation of the color of pigmented plastics, J. Opt. Soc. Am. 32, 1942 (from memory).
describe('the surface of a paint film', () => {
  it('from inside out and back in again is the same', () => {
    for (const surface of surfaces) {
      for (const r of steps) {
        expect(inside(outside(r, surface), surface)).toBeCloseTo(r, 12);
        const R = surface.k1 + (1 - surface.k1) * r;
        expect(outside(inside(R, surface), surface)).toBeCloseTo(R, 12);
      }
    }
  });

  it('black shows k1, white stays white, and more inside is more outside', () => {
    for (const surface of surfaces) {
      expect(outside(0, surface)).toBe(surface.k1);
      expect(outside(1, surface)).toBeCloseTo(1, 12);
      const seen = steps.map((r) => outside(r, surface));
      for (const [n, R] of seen.entries()) if (n) expect(R).toBeGreaterThan(seen[n - 1] as number);
    }
  });

  it('without reflection from inside it is a plain floor', () => {
    for (const r of steps) expect(outside(r, floor)).toBeCloseTo(0.03 + 0.97 * r, 15);
  });

  // Worked by hand: 0.04 + 0.96 x 0.4 x 0.5 / (1 - 0.3) and 0.03 + 0.97 x 0.4 x 0.2 / (1 - 0.12).
  it('is what the formula gives by hand for k1 0.04, k2 0.6 and for k1 0.03, k2 0.6', () => {
    expect(outside(0.5, { k1: 0.04, k2: 0.6 })).toBeCloseTo(0.3142857, 7);
    expect(outside(0.2, { k1: 0.03, k2: 0.6 })).toBeCloseTo(0.1181818, 7);
  });

  it('darkens everything between black and white, so that a stronger colour is seen', () => {
    for (const r of steps.slice(1, -1)) {
      expect(outside(r, app)).toBeLessThan(outside(r, { k1: app.k1, k2: 0 }));
    }
  });

  it('its slope is that of its curve', () => {
    const step = 1e-5;
    for (const surface of surfaces) {
      for (const r of steps) {
        const slope = (outside(r + step, surface) - outside(r - step, surface)) / (2 * step);
        expect(slopeOfOutside(r, surface)).toBeCloseTo(slope, 6);
      }
    }
  });
});
