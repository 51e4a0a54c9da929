import { expect, test } from 'vitest';
import { vapourPressure } from '../../../../app/model/drying/vapour-pressure.ts';
import vectors from '../../../fixtures/drying-vectors.json' with { type: 'json' };

test.each(vectors.publishedVapourKilopascal)(
  // Source: published vapour pressure table (encyclopaedia page), rounded to four digits.
  'vapour pressure at %f C is within 0.1 %% of the published %f kPa',
  (celsius, kilopascal) => {
    expect(
      Math.abs(vapourPressure(celsius as number) / ((kilopascal as number) * 1000) - 1),
    ).toBeLessThan(0.001);
  },
);

test.each(vectors.vapourPa.filter((row) => row.T <= 50))(
  // Source: IAPWS SR1-86 and Hyland & Wexler 1983, computed independently.
  'vapour pressure at $T C agrees with the steam tables',
  ({ T, iapws, hylandWexler, buck96 }) => {
    expect(Math.abs(vapourPressure(T) / iapws - 1)).toBeLessThan(0.001);
    expect(Math.abs(vapourPressure(T) / hylandWexler - 1)).toBeLessThan(0.001);
    expect(vapourPressure(T)).toBeCloseTo(buck96, 1);
  },
);
