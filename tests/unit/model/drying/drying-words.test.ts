import { expect, test } from 'vitest';
import {
  airInWords,
  chosenOf,
  figureOf,
  warmths,
} from '../../../../app/model/drying/air-choices.ts';
import { boneDrySign, leaveIt } from '../../../../app/model/drying/bone-dry-sign.ts';
import { keptAirOf } from '../../../../app/model/drying/kept-air.ts';
import { paceInWords } from '../../../../app/model/drying/pace-in-words.ts';
import { roomWeather } from '../../../../app/model/drying/weather.ts';
import { waterKindOf } from '../../../../app/model/water-kind.ts';

test('her pace in a sentence', () => {
  const pace = (factor: number, taps: number) => ({ factor, taps, scatter: 0.2 });
  expect(paceInWords('shine', 'wash', pace(1 / 1.3, 4))).toBe(
    'First washes on dry paper lose their shine 1.3 times as fast as reckoned, from 4 taps.',
  );
  expect(paceInWords('dry', 'wetInWet', pace(1.5, 1))).toBe(
    'Wet-in-wet washes get bone dry in 1.5 times the time reckoned, from 1 tap.',
  );
  expect(paceInWords('dry', 'glaze', pace(1.02, 2))).toMatch(/bone dry as reckoned/);
  expect(paceInWords('dry', 'glaze', pace(1, 0))).toBeNull();
});

test('in humid or cold air the sign is its colour, not the hand', () => {
  expect(boneDrySign(roomWeather)).toMatch(/back of the hand/);
  for (const weather of [
    { ...roomWeather, humidity: 86 },
    { ...roomWeather, celsius: 7 },
  ])
    expect(boneDrySign(weather)).toMatch(/takes hours.*tells nothing.*pale as a dry scrap/);
  expect(leaveIt).toMatch(/leave it/);
});

test('words and figures of the air', () => {
  expect(figureOf(warmths, 'warm')).toBe(25);
  expect(chosenOf(warmths, 25)).toBe('warm');
  expect(chosenOf(warmths, 24.9)).toBeNull();
  expect(airInWords({ ...roomWeather, sunWatts: 600, hairDryer: true, backing: 'wet' })).toBe(
    '20 °C, 50 % humidity, still air (0.15 m/s), sun, wet underneath, hair dryer',
  );
});

test('kept air comes back; what is broken in it counts as usual', () => {
  const air = { schema: 1, weather: { ...roomWeather, celsius: 7, backing: 'block' } };
  expect(keptAirOf({ ...air, paper: { gsm: 640, fibre: 'cellulose' } })).toMatchObject({
    weather: { celsius: 7, humidity: 50, backing: 'block', hairDryer: false },
    paper: { gsm: 640, fibre: 'cellulose' },
  });
  expect(keptAirOf({ schema: 1, weather: { celsius: 'warm' }, paper: 3 })).toMatchObject({
    weather: { celsius: 20, humidity: 50, backing: 'board' },
    paper: { gsm: 300, fibre: 'cotton' },
  });
  for (const none of [null, undefined, 3, 'x', {}, { schema: 2, weather: {} }])
    expect(keptAirOf(none)).toBeNull();
});

test.each([
  ['wash/sheet/1', 'wash', 'wet on dry', 'wash'],
  ['wash/subject/2', 'wash', 'wet on dry', 'stroke'],
  ['wash/sheet/2', 'wash', 'glaze', 'glaze'],
  ['wash/sheet/1', 'wash', 'wet-in-wet', 'wetInWet'],
  ['accents/sheet/0', 'accents', 'dry brush', 'accents'],
  ['last-lights/sheet/0', 'last-lights', 'opaque white', 'accents'],
  ['lift/sheet/0', 'lift', 'lifting', 'lift'],
  ['mask/sheet/0', 'mask', 'masking', null],
  ['dry/sheet/1', 'dry', 'none', null],
] as const)('%s, %s, %s puts down the water of: %s', (key, kind, technique, water) => {
  expect(waterKindOf({ key, kind, technique })).toBe(water);
});
