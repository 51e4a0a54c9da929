import { expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import {
  colourWarning,
  darkWarning,
  valueWarning,
} from '../../../../../app/core/plan/reach/colour-warnings.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { madeFacts } from '../../../../support/plan/made-work.ts';
import { paintsNamed } from '../../../../support/plan/solved-facts.ts';

const paints = paintsNamed('pb29-ultramarine-blue', 'pbr7-burnt-sienna');
const made = madeFacts({ slots: [{ lightness: 50 }], washes: { sheet: [[0]] } });
const families = [1, 2].map(
  (id) => ({ id, lab: [50, 0, 0], share: 0.5, name: `colour ${id}` }) as const,
);
const facts = (slots: readonly Slot[], some = paints) => ({
  ...made,
  reading: { ...made.reading, families },
  slots,
  paints: some,
});
const shapes = (...shares: readonly number[]): Slot[] =>
  shares.map((share, i): Slot => {
    return {
      ...(made.slots[0] as Slot),
      reserve: false,
      family: i < 2 ? 1 : 2,
      share,
      target: [50, 0, 0],
    };
  });
const colourTold = (slots: readonly Slot[], last: readonly Lab[], some = paints) =>
  words(colourWarning(facts(slots, some), slots, last)?.text);
const met: Lab = [50, 0, 0];
const missed: Lab = [50, 30, 0];

test('a family is named where two fifths of it come out clearly different', () => {
  expect(colourTold(shapes(0.2, 0.2), [met, missed])).toMatch(/^The colour 1 can't be mixed/);
  expect(colourTold(shapes(0.28, 0.2), [met, missed])).toMatch(/colour 1/);
  expect(colourTold(shapes(0.32, 0.2), [met, missed])).toBe('');
  // Among several the one missed on most of the sheet.
  expect(colourTold(shapes(0.1, 0.1, 0.3), [missed, met, missed])).toMatch(/^The colour 2/);
  expect(colourTold(shapes(0.2, 0.2, 0.3), [missed, missed, missed])).toMatch(/^The colour 1/);
});

test('not for a slight difference, a small family, or what stays white', () => {
  expect(colourTold(shapes(0.4), [[50, 5, 0]])).toBe('');
  expect(colourTold(shapes(0.029), [missed])).toBe('');
  expect(colourTold(shapes(0.031), [missed])).toBeDefined();
  const white = shapes(0.4).map((slot) => ({ ...slot, reserve: true }));
  expect(colourTold(white, [missed])).toBe('');
});

test('of one paint nobody expects the colours: another word', () => {
  expect(colourTold(shapes(0.4), [missed], paints.slice(0, 1))).toMatch(/^One paint can't/);
});

test('where the colours are hers only the value counts, too light or too dark', () => {
  const slots = shapes(0.4);
  const told = (lightness: number): boolean =>
    valueWarning(facts(slots), slots, [[lightness, 60, 60]]) !== null;
  expect([50, 57, 59, 43, 41].map(told)).toEqual([false, false, true, false, true]);
});

test('darks: half a value short is not worth a word; more is told in values', () => {
  expect(darkWarning(25, 20)).toBeNull();
  expect(darkWarning(10, 20)).toBeNull();
  expect(darkWarning(25.5, 20)?.code).toBe('dark-out-of-reach');
  expect(words(darkWarning(40, 20)?.text)).toMatch(
    /^The darks want value 2\.0 .*these paints reach 3\.9: .* too light\. Add a deep blue/,
  );
  expect(words(darkWarning(40, 20, true)?.text)).toMatch(
    /this paint reaches .*Take a darker paint/,
  );
});
