import { describe, expect, test } from 'vitest';
import { modelRange } from '../../../../app/core/drying/estimate-drying.ts';

type Row = [load: number, gsm: number, early: number, late: number];
interface Climate {
  celsius: number;
  humidity: number;
  airSpeed: number;
  rows: Row[];
}

// Worked minutes of an independent computation of the same physics (own, printed rounded);
// a single figure stands for both ends.
const climates: Climate[] = [
  {
    celsius: 20,
    humidity: 50,
    airSpeed: 0.15,
    rows: [
      [20, 190, 21, 37],
      [20, 300, 21, 50],
      [20, 640, 21, 89],
      [40, 190, 42, 52],
      [40, 300, 42, 64],
      [40, 640, 42, 104],
      [80, 190, 83, 85],
      [80, 300, 83, 95],
      [80, 640, 83, 132],
      [150, 190, 149, 149],
      [150, 300, 156, 156],
      [150, 640, 156, 186],
      [300, 300, 293, 293],
      [300, 640, 311, 311],
    ],
  },
  {
    celsius: 23,
    humidity: 40,
    airSpeed: 0.2,
    rows: [
      [40, 300, 27, 40],
      [80, 300, 53, 61],
      [150, 300, 100, 100],
    ],
  },
  {
    celsius: 15,
    humidity: 70,
    airSpeed: 0.15,
    rows: [
      [40, 300, 90, 141],
      [80, 300, 179, 206],
      [150, 300, 336, 336],
    ],
  },
  {
    celsius: 30,
    humidity: 85,
    airSpeed: 0.2,
    rows: [
      [40, 300, 83, 121],
      [80, 300, 165, 184],
      [150, 300, 310, 310],
    ],
  },
  {
    celsius: 20,
    humidity: 50,
    airSpeed: 1,
    rows: [
      [40, 300, 18, 27],
      [80, 300, 36, 40],
      [150, 300, 67, 67],
    ],
  },
  {
    celsius: 20,
    humidity: 60,
    airSpeed: 2,
    rows: [
      [40, 300, 16, 24],
      [80, 300, 32, 36],
      [150, 300, 60, 60],
    ],
  },
  {
    celsius: 37,
    humidity: 20,
    airSpeed: 3,
    rows: [
      [40, 300, 4, 5],
      [80, 300, 7, 8],
      [150, 300, 13, 13],
    ],
  },
  { celsius: 8, humidity: 95, airSpeed: 0.5, rows: [[40, 300, 413, 485]] },
];

const near = (minutes: number, printed: number): void => {
  // 10 %, and half a minute for the rounding of the print.
  expect(Math.abs(minutes - printed)).toBeLessThanOrEqual(printed * 0.1 + 0.5);
};

describe.each(climates)('$celsius C, $humidity %, $airSpeed m/s', ({ rows, ...weather }) => {
  test.each(rows)('%d g/m2 on %d g/m2 paper dries in %d to %d min', (load, gsm, early, late) => {
    const { dryMinutes } = modelRange({ waterGramsPerSquareMetre: load, weather, paperGsm: gsm });
    near(dryMinutes[0], early);
    near(dryMinutes[1], late);
  });
});

const room = { celsius: 20, humidity: 50, airSpeed: 0.15 };
test.each([
  [40, 0.6, 2.0],
  [80, 3, 9],
  [150, 11, 30],
  [300, 39, 96],
])('the shine of %d g/m2 goes in %f to %f min', (load, soft, hard) => {
  const { shineMinutes } = modelRange({
    waterGramsPerSquareMetre: load,
    weather: room,
    paperGsm: 300,
  });
  near(shineMinutes[0], soft);
  near(shineMinutes[1], hard);
});

test('wind and warmth hardly touch the shine but rule bone dry', () => {
  const at = (weather: typeof room) =>
    modelRange({ waterGramsPerSquareMetre: 40, weather, paperGsm: 300 });
  const still = at(room);
  const windy = at({ celsius: 30, humidity: 30, airSpeed: 2 });
  expect(windy.shineMinutes[1] / still.shineMinutes[1]).toBeGreaterThan(0.6);
  expect(windy.dryMinutes[1] / still.dryMinutes[1]).toBeLessThan(0.3);
});
