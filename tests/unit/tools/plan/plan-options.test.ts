import { expect, test } from 'vitest';
import { roomWeather } from '../../../../app/core/drying/weather.ts';
import { planOptions, wishesFromOptions } from '../../../../app/tools/plan/plan-options.ts';

// A quarter imperial sheet is 381 x 279 mm, paper is sold from 90 g/m2 on: common practice, no source.
test('a photo alone is enough: quarter imperial, everything else proposed', () => {
  expect(planOptions(['a.jpg'])).toEqual({
    photo: 'a.jpg',
    sheet: { format: 'own', widthMm: 381, heightMm: 279 },
  });
});

test('all options', () => {
  const options = planOptions(
    'a.jpg --sheet 210x297.5 --bands 3 --palette 4 --paints x,y --evening 90 --dryer --washes 2 --paper 190,cellulose --out d'.split(
      ' ',
    ),
  );
  expect(options).toEqual({
    photo: 'a.jpg',
    sheet: { format: 'own', widthMm: 210, heightMm: 297.5 },
    bands: 3,
    palette: 4,
    paints: ['x', 'y'],
    evening: 90,
    dryer: true,
    washes: 2,
    paper: { gsm: 190, fibre: 'cellulose' },
    out: 'd',
  });
});

test.each([
  ['', /no photo/],
  ['a.jpg b.jpg', /one photo at a time/],
  ['a.jpg --sheet 10x10', /--sheet must be/],
  ['a.jpg --sheet wide', /--sheet must be/],
  ['a.jpg --bands 8', /--bands must be a whole number from 2 to 7/],
  ['a.jpg --bands 3.5', /--bands/],
  ['a.jpg --palette 0', /--palette must be a whole number from 1 to 7/],
  ['a.jpg --evening 5', /--evening must be a whole number from 20 to 1440/],
  ['a.jpg --washes 9', /--washes must be a whole number from 1 to 8/],
  ['a.jpg --paper heavy', /--paper must be GSM/],
  ['a.jpg --paper 300,linen', /--paper must be GSM/],
  ['a.jpg --paper 3000', /--paper must be GSM/],
  ['a.jpg --subject 0.2,0.2', /--subject must be at least 3 places/],
  ['a.jpg --passages together', /--passages needs --subject/],
  ['a.jpg --paints x,,y', /--paints must be/],
  ['a.jpg --colour', /--colour/],
  ['a.jpg --out', /--out/],
])('"%s" is refused in one line', (text, cause) => {
  const args = text.split(' ').filter((word) => word !== '');
  expect(() => planOptions(args)).toThrow(cause);
  try {
    planOptions(args);
  } catch (thrown) {
    expect(String((thrown as Error).message)).not.toContain('\n');
  }
});

test('time, air, washes and paper are wishes of the plan, with and without named paints', () => {
  const words = ['a.jpg', '--evening', '60', '--dryer', '--washes', '4', '--paper', '640'];
  const given = {
    evening: 60,
    weather: { ...roomWeather, hairDryer: true },
    washes: 4,
    paper: { gsm: 640, fibre: 'cotton' },
  };
  expect(wishesFromOptions(planOptions(words), [])).toEqual(given);
  expect(wishesFromOptions(planOptions([...words, '--paints', 'a']), ['a'])).toEqual({
    ...given,
    chosen: ['a'],
  });
});

test('a subject and the order of ground and subject', () => {
  const words = ['a.jpg', '--subject', '0.2,0.2 .8,0.2 1,0.9'];
  const path = [
    [0.2, 0.2],
    [0.8, 0.2],
    [1, 0.9],
  ];
  expect(planOptions(words).subject).toEqual({ mode: 'circle', path, brush: 0 });
  for (const [word, passages] of [
    ['ground-first', 'ground first'],
    ['subject-first', 'subject first'],
    ['together', 'together'],
  ] as const) {
    expect(wishesFromOptions(planOptions([...words, '--passages', word]), [])).toEqual({
      passages,
    });
  }
  expect(() => planOptions([...words, '--passages', 'ground first'])).toThrow(/--passages must be/);
  for (const places of ['0.2,0.2 0.8,0.2 1.1,0.9', '0.2,0.2 0.8,0.2 0.9', '0,0 1,0 a,b']) {
    expect(() => planOptions(['a.jpg', '--subject', places])).toThrow(/--subject must be/);
  }
});

test('named paints are used as they are; more than the palette holds are chosen from', () => {
  const options = (palette?: number) => ({
    ...planOptions(['a.jpg', '--paints', 'a,b,c']),
    ...(palette !== undefined && { palette }),
  });
  const known = ['a', 'b', 'c', 'd'];
  expect(wishesFromOptions(options(), known)).toEqual({ chosen: ['a', 'b', 'c'] });
  expect(wishesFromOptions(options(2), known)).toEqual({ box: ['a', 'b', 'c'], paletteSize: 2 });
  expect(() => wishesFromOptions(options(), ['a', 'b'])).toThrow(/no paint "c"/);
});
