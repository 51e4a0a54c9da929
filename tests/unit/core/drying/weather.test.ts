import { expect, test } from 'vitest';
import { modelRange } from '../../../../app/core/drying/estimate-drying.ts';
import { evaporationOf } from '../../../../app/core/drying/evaporation.ts';
import {
  airs,
  coolTestWorks,
  figureOf,
  humidities,
  roomWeather,
  type Weather,
  warmths,
} from '../../../../app/core/drying/weather.ts';
import { airInWords } from '../../../../app/core/words/drying/drying-words.ts';

const room: Weather = { celsius: 20, humidity: 50, airSpeed: 0.15 };
const rate = (weather: Weather): number => evaporationOf(weather).gramsPerSquareMetreHour;
const wash = (weather: Weather) =>
  modelRange({ waterGramsPerSquareMetre: 40, weather, paperGsm: 300 });

test('a pad behind the sheet warms it less than a board', () => {
  // Source: own computation of the same physics elsewhere: foam 50, wood 59 g/m2 h (printed rounded).
  expect(rate(room)).toBeCloseTo(59, -0.5);
  expect(Math.abs(rate({ ...room, backing: 'block' }) / 50 - 1)).toBeLessThan(0.05);
});

test('direct sun adds about a quarter in a warm wind, more in still air', () => {
  // Source: the same computation: 600 W/m2 adds about 25 % at 35 C in wind.
  const windy: Weather = { celsius: 35, humidity: 20, airSpeed: 2 };
  const added = rate({ ...windy, sunWatts: 600 }) / rate(windy) - 1;
  expect(added).toBeGreaterThan(0.15);
  expect(added).toBeLessThan(0.35);
  expect(rate({ ...room, sunWatts: 600 }) / rate(room) - 1).toBeGreaterThan(added);
});

test('a hair dryer brings a flat wash on a quarter sheet down to 10 to 25 minutes', () => {
  // Source: the same computation, for six spots swept in turn; the dryer's air is a guess.
  const [low, high] = wash({ ...room, hairDryer: true }).dryMinutes;
  expect(low).toBeGreaterThan(9);
  expect(high).toBeLessThan(25);
  expect(wash({ ...room, hairDryer: true }).shineMinutes).toEqual(wash(room).shineMinutes);
});

test('a sheet wet underneath keeps its shine and its wet much longer', () => {
  const soaked = wash({ ...room, backing: 'wet' });
  expect(soaked.shineMinutes[1]).toBeGreaterThan(2 * wash(room).shineMinutes[1]);
  expect(soaked.dryMinutes[0]).toBeGreaterThan(3 * wash(room).dryMinutes[0]);
  // Source: a painter's report: wet-on-wet takes several hours.
  expect(soaked.dryMinutes[1]).toBeGreaterThan(120);
});

test('what is set is said in a line: nothing of sun, block or dryer where she set none', () => {
  expect(airInWords(roomWeather)).toBe(
    '20°C (68°F), 50 % humidity, still air (0.15 m/s), on a board',
  );
  expect(airInWords({ ...roomWeather, sunWatts: 0, hairDryer: false })).toBe(
    airInWords(roomWeather),
  );
  expect(airInWords({ ...roomWeather, backing: 'block' })).toMatch(/ m\/s\), on the block$/);
  expect(airInWords({ ...roomWeather, sunWatts: 1 })).toMatch(/, sun, on a board$/);
});

test('air moving faster is said by its word, between the words by its figure alone', () => {
  const said = (airSpeed: number) => airInWords({ ...roomWeather, airSpeed }).split(', ')[2];
  expect([0.5, 1, 2, 3, 1.4].map(said)).toEqual([
    'moving air (0.5 m/s)',
    'fan (1 m/s)',
    'breeze (2 m/s)',
    'wind (3 m/s)',
    'air (1.4 m/s)',
  ]);
});

test('the hand tells damp from dry up to 85 % humidity and down to 8 degrees', () => {
  const works = (celsius: number, humidity: number): boolean =>
    coolTestWorks({ ...roomWeather, celsius, humidity });
  expect([works(8, 85), works(8, 86), works(7.5, 50)]).toEqual([true, false, false]);
});

test('what is offered rises from word to word, and the usual of it is the usual room', () => {
  for (const choices of [warmths, humidities, airs]) {
    const figures = choices.map(([, , figure]) => figure);
    expect(figures).toEqual([...new Set(figures)].sort((one, other) => one - other));
  }
  expect({
    celsius: figureOf(warmths, 'usual'),
    humidity: figureOf(humidities, 'usual'),
    airSpeed: figureOf(airs, 'still'),
  }).toEqual(roomWeather);
  expect(figureOf(warmths, 'frost')).toBeNaN();
});
