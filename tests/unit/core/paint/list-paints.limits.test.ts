import { describe, expect, test } from 'vitest';
import { lightnessOfValue } from '../../../../app/core/colour/lightness.ts';
import { hueGroup, paintFilters, paintUses } from '../../../../app/core/paint/list-paints.ts';
import { nothingKnown } from '../../../../app/core/paint/paint-traits.ts';
import { card } from '../../../support/paint/cards.ts';

/** A ladder of three steps whose middle one has this hue angle, degrees, and chroma. */
const ladder = (angle: number, chroma: number) => {
  const radians = (angle * Math.PI) / 180;
  return [
    [90, 0, 0],
    [60, chroma * Math.cos(radians), chroma * Math.sin(radians)],
    [30, 0, 0],
  ] as const;
};
const groupOf = (angle: number, chroma = 40, ci: readonly string[] = []) =>
  hueGroup({ ladder: ladder(angle, chroma), ci: [...ci] });

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

  test('is grey under a chroma of 10, whatever pigment it is', () => {
    expect(groupOf(60, 9.9)).toBe('grey');
    expect(groupOf(60, 9.9, ['PBr7'])).toBe('grey');
    expect(groupOf(60, 10.1)).toBe('orange');
  });

  test.each(['PBr7', 'PY42', 'PY43', 'PR101', 'PR102', 'PR101:1', 'PG23'])(
    'is the earths for %s',
    (ci) => {
      expect(groupOf(60, 40, [ci])).toBe('earth');
      expect(groupOf(60, 40, ['PY150', ci])).toBe('earth');
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
