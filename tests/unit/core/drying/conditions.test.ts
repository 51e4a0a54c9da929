import { expect, test } from 'vitest';
import { clampConditions } from '../../../../app/core/drying/conditions.ts';
import { roomWeather } from '../../../../app/core/drying/weather.ts';

// Where the model holds: this project's own (see app/core/drying/conditions.ts).
const clampedFrom = (every: number) => {
  const weather = { celsius: every, humidity: every, airSpeed: every, sunWatts: every };
  const { weather: air, ...rest } = clampConditions({
    waterGramsPerSquareMetre: every,
    paperGsm: every,
    weather: { ...roomWeather, ...weather },
  });
  const { celsius, humidity, airSpeed, sunWatts } = air;
  return { ...rest, celsius, humidity, airSpeed, sunWatts };
};

test('what is beyond where the model holds counts as its end', () => {
  expect(clampedFrom(-1e9)).toEqual({
    waterGramsPerSquareMetre: 0,
    paperGsm: 60,
    celsius: 1,
    humidity: 20,
    airSpeed: 0.05,
    sunWatts: 0,
  });
  expect(clampedFrom(1e9)).toEqual({
    waterGramsPerSquareMetre: 1000,
    paperGsm: 1200,
    celsius: 50,
    humidity: 97,
    airSpeed: 10,
    sunWatts: 1100,
  });
});

test('what is no number counts as an ordinary room, no sun, a usual paper and no water', () => {
  const { celsius, humidity, airSpeed } = roomWeather;
  const usual = { waterGramsPerSquareMetre: 0, paperGsm: 300, sunWatts: 0 };
  expect(clampedFrom(Number.NaN)).toEqual({ ...usual, celsius, humidity, airSpeed });
});
