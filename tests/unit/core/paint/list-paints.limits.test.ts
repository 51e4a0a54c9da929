import { describe, expect, test } from 'vitest';
import { lightnessOfValue } from '../../../../app/core/colour/lightness.ts';
import { hueGroup, paintFilters, paintUses } from '../../../../app/core/paint/list-paints.ts';
import { nothingKnown } from '../../../../app/core/paint/paint-traits.ts';
import { card } from '../../../support/paint/cards.ts';

/** A ladder of three steps whose middle one has this hue angle, degrees, and chroma; the last has this Munsell value. */
const ladder = (angle: number, chroma: number, darkest: number) => {
  const radians = (angle * Math.PI) / 180;
  return [
    [90, 0, 0],
    [60, chroma * Math.cos(radians), chroma * Math.sin(radians)],
    [lightnessOfValue(darkest), 0, 0],
  ] as const;
};
const groupOf = (angle: number, chroma = 40, ci: readonly string[] = [], darkest = 5.6) =>
  hueGroup({ ladder: ladder(angle, chroma, darkest), ci: [...ci] });

// Limits and figures are (own): the docstrings of what is tested say why.
describe('the group a paint is looked for in', () => {
  test.each([
    [45, 'red', 'orange'],
    [75, 'orange', 'yellow'],
    [118, 'yellow', 'green'],
    [205, 'green', 'blue'],
    [295, 'blue', 'violet'],
    [335, 'violet', 'red'],
    [360, 'red', 'red'],
  ])('changes at %d degrees', (limit, under, over) => {
    expect(groupOf(limit - 0.4)).toBe(under);
    expect(groupOf(limit + 0.4)).toBe(over);
  });

  test('is grey under a chroma of 10', () => {
    expect(groupOf(60, 9.9)).toBe('grey');
    expect(groupOf(60, 9.9, ['PBk7'])).toBe('grey');
    expect(groupOf(60, 10.1)).toBe('orange');
  });

  test.each([
    [96, 5.4, 'green'],
    [94, 5.4, 'yellow'],
    [96, 5.6, 'yellow'],
    [60, 5.4, 'orange'],
  ])(
    'at %d degrees and value %d is %s: a dark greenish yellow looks green',
    (angle, value, group) => {
      expect(groupOf(angle, 40, [], value)).toBe(group);
    },
  );

  test.each(['PBr7', 'PY42', 'PY43', 'PR101', 'PR102', 'PR101:1', 'PG23'])(
    'is the earths for %s',
    (ci) => {
      expect(groupOf(60, 40, [ci])).toBe('earth');
      expect(groupOf(60, 9.9, [ci, 'PBk7'])).toBe('earth');
      expect(groupOf(60, 40, ['PG7', ci])).toBe('orange');
    },
  );

  test.each(['PY40', 'PY4', 'PR1', 'PR10', 'PR103', 'PG7', 'PG230', 'PY420'])(
    'is not the earths for %s',
    (ci) => expect(groupOf(60, 40, [ci])).toBe('orange'),
  );
});

describe('how dark a paint gets', () => {
  const reaching = (value: number) => ({
    ...card('pb28-cobalt-blue'),
    properties: nothingKnown,
    ladder: [9, value].map((each) => [lightnessOfValue(each), 0, 0] as const),
  });

  test.each([
    [3.4, 'dark'],
    [3.6, 'middle'],
    [6.4, 'middle'],
    [6.6, 'light'],
  ])('masstone of value %d: %s', (value, choice) => {
    expect(paintFilters.reach.choiceOf(reaching(value))).toBe(choice);
    expect(paintUses(reaching(value))).toEqual(choice === 'dark' ? ['darks'] : []);
  });
});
