import { describe, expect, test } from 'vitest';
import {
  changesOf,
  type PaintChange,
} from '../../../../../app/core/paint/measure/refine-paints.ts';
import type { Paint } from '../../../../../app/core/paint/paint.ts';
import { changesInWords } from '../../../../../app/core/words/paint/measured-paint.ts';

/** A grey paint of even K and S, and what is changed in it. */
const flat = (value: number) => new Array<number>(36).fill(value);
const grey = { name: 'my grey', K: flat(0.05), S: flat(0.02) } as unknown as Paint;
const inWords = (changes: PaintChange[]) => changesInWords({ name: grey.name, changes });
const said = (changed: Partial<Pick<Paint, 'K' | 'S'>>, strengthTimes = 1) =>
  inWords(changesOf(grey, { K: grey.K, S: grey.S, ...changed }, strengthTimes))
    .replace('my grey: ', '')
    .replace(' than it was taken for.', '');
/** K with more of it taken from some of the light: 0 is 380 nm, 35 is 730. */
const moreFrom = (from: number, to: number, times = 1.3) =>
  flat(0.05).map((k, i) => (i >= from && i < to ? k * times : k));

describe('what changed in a paint', () => {
  test('nothing to speak of', () => {
    expect(said({})).toBe('as it was taken for, hardly changed.');
  });

  test('its strength, from 15 % on either way', () => {
    expect(said({}, 1.16)).toBe('stronger');
    expect(said({}, 1.14)).toMatch(/hardly changed/);
    expect(said({}, 1 / 1.14)).toMatch(/hardly changed/);
    expect(said({}, 1 / 1.16)).toBe('weaker');
  });

  test('what it hides, from half as much again on', () => {
    expect(said({ S: flat(0.02 * 1.51) })).toBe('hiding more');
    expect(said({ S: flat(0.02 * 1.49) })).toMatch(/hardly changed/);
    expect(said({ S: flat(0.02 / 1.49) })).toMatch(/hardly changed/);
    expect(said({ S: flat(0.02 / 1.51) })).toBe('more transparent');
  });

  test('its hue: what it takes more of is missing', () => {
    expect(said({ K: moreFrom(10, 20) })).toMatch(/redder/); // green light, 480 to 570 nm
    expect(said({ K: moreFrom(21, 36) })).toMatch(/greener/); // red light
    expect(said({ K: moreFrom(0, 12) })).toMatch(/yellower/); // blue light
    expect(said({ K: moreFrom(15, 36) })).toMatch(/bluer/); // yellow light and red
    expect(said({ K: moreFrom(0, 12, 1.01) })).toMatch(/hardly changed/);
  });

  test('several at once, in one sentence', () => {
    const words = inWords(changesOf(grey, { K: grey.K, S: flat(0.04) }, 2));
    expect(words).toBe('my grey: stronger and hiding more than it was taken for.');
  });
});
