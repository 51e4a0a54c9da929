import { expect, test } from 'vitest';
import { evaporationOf, vapourPressure } from '../../../../app/core/drying/evaporation.ts';
import vectors from '../../../fixtures/drying-vectors.json' with { type: 'json' };
import { penmanRate } from '../../../support/drying/penman-rate.ts';

const weatherOf = (row: { Ta: number; RH: number; V: number }) => ({
  celsius: row.Ta,
  humidity: row.RH,
  airSpeed: row.V,
});

// Own computation apart from this code: the same physics iterated elsewhere (fixtures/drying-vectors.json).
test('the rate is within 5 % of an independent computation in 280 climates', () => {
  for (const row of vectors.rate) {
    const { gramsPerSquareMetreHour, celsius } = evaporationOf(weatherOf(row));
    // The table is rounded to 0.1, which matters where it says 3.1.
    expect(Math.abs(gramsPerSquareMetreHour - row.gm2h)).toBeLessThan(row.gm2h * 0.05);
    expect(Math.abs(celsius - row.Tsurface)).toBeLessThan(0.25);
  }
});

test('a wet face lies between the wet bulb and the air', () => {
  // Source: psychrometer equation, WMO No. 8 (from memory).
  for (const { T, RH, psychrometer } of vectors.wetBulb) {
    const { celsius } = evaporationOf({ celsius: T, humidity: RH, airSpeed: 0.15 });
    expect(celsius).toBeGreaterThan(psychrometer);
    expect(celsius).toBeLessThan(T);
  }
});

// Source of the form: Penman, H. L., Natural evaporation from open water, bare soil and grass, 1948 (from memory).
test('the closed form agrees up to 25 C and 1 m/s', () => {
  for (const row of vectors.rate.filter(
    (r) => r.Ta >= 10 && r.Ta <= 25 && r.V >= 0.15 && r.V <= 1 && r.RH >= 40 && r.RH <= 70,
  )) {
    const closed = penmanRate(weatherOf(row));
    const exact = evaporationOf(weatherOf(row)).gramsPerSquareMetreHour;
    expect(Math.abs(closed / exact - 1)).toBeLessThan(0.1);
  }
  const room = { celsius: 20, humidity: 50, airSpeed: 0.15 };
  expect(Math.abs(penmanRate(room) / evaporationOf(room).gramsPerSquareMetreHour - 1)).toBeLessThan(
    0.04,
  );
});

test('the clock reckons with the cool setting of a hair dryer', () => {
  // Source: own computation of the same physics elsewhere: 35 C at 2 m/s take 8.8 g/m2 min; the air is a guess.
  const room = { celsius: 20, humidity: 50, airSpeed: 0.15 };
  const still = evaporationOf(room).gramsPerSquareMetreHour;
  const { gramsPerSquareMetreHour, celsius } = evaporationOf({ ...room, hairDryer: true });
  const spots = 6; // swept in turn
  const atTheSpot = (spots * gramsPerSquareMetreHour - (spots - 1) * still) / 60;
  expect(atTheSpot).toBeCloseTo(8.8, 1);
  expect(celsius).toBe(evaporationOf(room).celsius);
});

test('dry fibre in damp air takes water up', () => {
  const damp = { celsius: 20, humidity: 80, airSpeed: 0.15 };
  expect(evaporationOf(damp, 0.5).gramsPerSquareMetreHour).toBeLessThan(0);
  expect(evaporationOf(damp, 0.8).gramsPerSquareMetreHour).toBeCloseTo(0, 3);
});

test.each(vectors.publishedVapourKilopascal)(
  // Source: a table of the vapour pressure of water on an encyclopaedia's page (no author, no year), four digits; the
  // triple point in it, 0.6113 kPa, agrees with Wexler, A., J. Res. NBS 80A, 1976 (611.657 Pa).
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
