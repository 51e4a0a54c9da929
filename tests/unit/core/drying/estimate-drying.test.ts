import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  createDryingModel,
  estimateDrying,
  modelRange,
} from '../../../../app/core/drying/estimate-drying.ts';

const room = { celsius: 20, humidity: 50, airSpeed: 0.15 };
const wash = { waterGramsPerSquareMetre: 40, weather: room, paperGsm: 300 };

test('untaught, an ordinary wash spans what painters report', () => {
  // Source: 'How long watercolor paint takes to dry', eatsip365 (a web page without author or year, weak): on
  // 300 g/m2 at 40 to 50 % shiny 0 to 5 min, bone dry 20 to 60 and more. The limits below are (own).
  const { shineMinutes, dryMinutes } = estimateDrying(wash);
  expect(shineMinutes[0]).toBeLessThan(1);
  expect(shineMinutes[1]).toBeGreaterThan(4.5);
  expect(dryMinutes[0]).toBeLessThanOrEqual(22);
  expect(dryMinutes[1]).toBeGreaterThan(60);
  expect(dryMinutes[1]).toBeLessThan(90);
});

// Own computation: how far a wet sheet lies below the air, 2.9 C at 20 C and 50 %, 0.5 at 90 %; the limits are (own).
test.each([
  [20, 50, true],
  [20, 85, true],
  [20, 86, false],
  [8, 50, true],
  [7.9, 50, false],
])('at %s C and %s per cent humidity the cool test works: %s', (celsius, humidity, works) => {
  const estimate = estimateDrying({ ...wash, weather: { ...room, celsius, humidity } });
  expect(estimate.coolTestWorks).toBe(works);
  expect(estimate.inHours).toBe(!works);
});

test('nothing wet takes no time', () => {
  expect(estimateDrying({ ...wash, waterGramsPerSquareMetre: 0 }).dryMinutes).toEqual([0, 0]);
});

test('whatever is entered, the answer is finite and in order', () => {
  const number = fc.oneof(fc.double(), fc.double({ min: -50, max: 500 }));
  fc.assert(
    fc.property(
      number,
      number,
      number,
      number,
      number,
      (water, gsm, celsius, humidity, airSpeed) => {
        const { shineMinutes, dryMinutes } = estimateDrying({
          waterGramsPerSquareMetre: water,
          paperGsm: gsm,
          weather: { celsius, humidity, airSpeed },
        });
        for (const [low, high] of [shineMinutes, dryMinutes]) {
          expect(Number.isFinite(high)).toBe(true);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThanOrEqual(high);
        }
      },
    ),
    { seed: 7, numRuns: 200 },
  );
});

test('more water, damper air, stiller air and thicker paper never dry sooner', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 300, noNaN: true }),
      fc.double({ min: 1, max: 40, noNaN: true }),
      fc.double({ min: 30, max: 85, noNaN: true }),
      fc.double({ min: 0.05, max: 3, noNaN: true }),
      (water, celsius, humidity, airSpeed) => {
        const late = (change: { water?: number; damper?: number; air?: number; gsm?: number }) =>
          estimateDrying({
            waterGramsPerSquareMetre: water + (change.water ?? 0),
            paperGsm: 300 + (change.gsm ?? 0),
            weather: {
              celsius,
              humidity: humidity + (change.damper ?? 0),
              airSpeed: airSpeed + (change.air ?? 0),
            },
          }).dryMinutes[1];
        const plain = late({});
        expect(late({ water: 10 })).toBeGreaterThan(plain);
        expect(late({ damper: 5 })).toBeGreaterThan(plain);
        expect(late({ air: 0.3 })).toBeLessThan(plain);
        expect(late({ gsm: 340 })).toBeGreaterThanOrEqual(plain - 1e-9);
      },
    ),
    { seed: 7, numRuns: 60 },
  );
});

test('a model that keeps its answers gives the same ones', () => {
  const dryingModel = createDryingModel();
  for (const water of [20, 150, 20]) {
    for (const hairDryer of [false, true]) {
      const conditions = {
        ...wash,
        waterGramsPerSquareMetre: water,
        weather: { ...room, hairDryer },
      };
      expect(dryingModel(conditions)).toEqual(modelRange(conditions));
      expect(estimateDrying(conditions, undefined, dryingModel)).toEqual(
        estimateDrying(conditions),
      );
    }
  }
  expect(dryingModel(wash)).toBe(dryingModel({ ...wash }));
});
