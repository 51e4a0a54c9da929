import { expect, test } from 'vitest';
import {
  checkReadingInput,
  type ReadPictureInput,
} from '../../../../app/core/reading/reading-input.ts';
import { painted } from '../../../support/reading/rasters.ts';

// Bounds are those of limits.ts and masses.ts (own).
const { raster, clipped } = painted(3, 2, () => [120, 130, 90]);
const sound: ReadPictureInput = {
  ...{ raster, clipped, darkest: 12, paper: 95.5, wishes: {} },
  sheet: { widthMm: 381, heightMm: 279 },
};
const check = (changed: Partial<ReadPictureInput>) => () =>
  checkReadingInput({ ...sound, ...changed });
const wish = (wishes: ReadPictureInput['wishes']) => check({ wishes });

const line = [
  [0.1, 0.1],
  [0.5, 0.9],
] as const;
const circle = { mode: 'circle', path: line, brush: 0 } as const;
const keep = { mode: 'keep', path: line, brush: 0.1 } as const;
const add = { mode: 'add', path: line, brush: 0.1 } as const;

test('what a reading can be made of is let through', () => {
  expect(check({})).not.toThrow();
  expect(check({ darkest: 0, paper: 100 })).not.toThrow();
  expect(wish({ subject: [circle, add], whites: [keep] })).not.toThrow();
  for (const bands of [2, 7]) expect(wish({ bands })).not.toThrow();
  for (const families of [1, 6]) expect(wish({ families })).not.toThrow();
  expect(wish({ limits: [10, 20, 30, 40, 50, 60] })).not.toThrow();
  expect(wish({ smallest: { firstWash: 40, second: 5, darks: 1 } })).not.toThrow();
  expect(wish({ familyEdits: [{ join: 'all' }] })).not.toThrow();
});

test.each([
  ['no pixels', check({ raster: { ...raster, width: 0 } }), /no pixels/],
  ['a plane too short', check({ raster: { ...raster, blue: raster.blue.slice(1) } }), /no pixels/],
  ['a sheet of no width', check({ sheet: { widthMm: 0, heightMm: 279 } }), /no size/],
  ['a sheet of no height', check({ sheet: { widthMm: 381, heightMm: 0 } }), /no size/],
  ['paper as dark as the paint', check({ darkest: 50, paper: 50 }), /lighter/],
  ['darker than black', check({ darkest: -1 }), /lighter/],
  ['lighter than white', check({ paper: 100.5 }), /lighter/],
  ['a correction before the circle', wish({ subject: [add] }), /circled once/],
  ['two circles', wish({ subject: [circle, circle] }), /circled once/],
  ['a circle of nothing', wish({ subject: [{ ...circle, path: [] }] }), /circled once/],
  [
    'a circle nowhere',
    wish({ subject: [{ ...circle, path: [[0.1, Number.NaN]] }] }),
    /circled once/,
  ],
  [
    'a brush too wide for the subject',
    wish({ subject: [circle, { ...add, brush: 3 }] }),
    /circled once/,
  ],
  ['whites nowhere', wish({ whites: [{ ...keep, path: [[Number.NaN, 0]] }] }), /whites/],
  ['one value', wish({ bands: 1 }), /2 to 7 values/],
  ['eight values', wish({ bands: 8 }), /2 to 7 values/],
  ['a limit at black', wish({ limits: [0, 40] }), /Limits/],
  ['a limit at white', wish({ limits: [40, 100] }), /Limits/],
  ['seven limits', wish({ limits: [1, 2, 3, 4, 5, 6, 7] }), /Limits/],
  ['no family', wish({ families: 0 }), /1 to 6/],
  ['seven families', wish({ families: 7 }), /1 to 6/],
  [
    'a part of no colour',
    wish({ familyEdits: [{ part: [Number.NaN, 0] }] } as never),
    /names no colour/,
  ],
  ['a wash too coarse', wish({ smallest: { firstWash: 41, second: 5, darks: 2 } }), /1 to 40 mm/],
  ['darks too fine', wish({ smallest: { firstWash: 10, second: 5, darks: 0.9 } }), /1 to 40 mm/],
])('%s: refused in words', (_, checked, words) => {
  expect(checked).toThrow(RangeError);
  expect(checked).toThrow(words);
});
