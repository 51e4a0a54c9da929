import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { labOfReflectance } from '../../../../../app/core/colour/spectrum.ts';
import {
  defaultPaper,
  reflectanceOfWashes,
} from '../../../../../app/core/paint/colour-of-washes.ts';
import { butterFrom } from '../../../../../app/core/paint/consistency.ts';
import { mixSpectra } from '../../../../../app/core/paint/layer.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { chooseMarks } from '../../../../../app/core/plan/details/choose-marks.ts';
import type { Mix } from '../../../../../app/core/plan/plan.ts';
import type { Detail } from '../../../../../app/core/reading/details/detail.ts';
import { toneRange } from '../../../../../app/core/reading/tone-range.ts';

// Which figures: (own), as the planner's.
const paints = {
  blue: 'pb29-ultramarine-blue',
  sienna: 'pbr7-burnt-sienna',
  yellow: 'py43-yellow-ochre',
  umber: 'pbr7-burnt-umber',
} as const;
type Name = keyof typeof paints;
const paintOf = (name: string) => {
  const found = paintBox.find(({ id }) => id === paints[name as Name]);
  if (!found) throw new Error(name);
  return found;
};
const mix = (name: string, puddle = name): Mix =>
  ({ id: `mix-${name}`, puddle, parts: [{ paint: name, parts: 1 }] }) as unknown as Mix;
const spectraOf = ({ parts }: Mix) =>
  mixSpectra(
    parts.map(({ paint }) => paintOf(paint)),
    parts.map(({ parts: n }) => n),
  );
const range = toneRange('photographed', 10, 95, 25, 95);
const pale = reflectanceOfWashes([{ paints: [paintOf('yellow')], parts: [1], load: 1 }]);
const underneath = { reflectance: pale, lightness: labOfReflectance(pale)[0] };

const shape = (lab: Lab, more: Partial<Detail> = {}): Detail => ({
  isLight: false,
  lines: [0, 0, 1],
  at: [0.5, 0.5],
  areaMm2: 10,
  lab,
  rows: [0],
  shares: [1],
  near: 1,
  ...more,
});
/** What a puddle of one paint makes over what lies there. */
const coloured = (name: Name, load: number): Lab =>
  labOfReflectance(
    reflectanceOfWashes([
      { paints: [paintOf('yellow')], parts: [1], load: 1 },
      { paints: [paintOf(name)], parts: [1], load },
    ]),
  );
const chosen = (shapes: readonly Detail[], names: readonly Name[]) =>
  chooseMarks({
    shapes,
    underneathOf: () => underneath,
    mixes: names.map((name) => mix(name)),
    spectraOf,
    range,
  });
/** So light that they are details and no accents: those come first out of the darkest. */
const darks = [1, 2, 3].map(() => shape([12, 0, 0], { areaMm2: 5 }));

describe('details', () => {
  test('are set from the puddle that gives their colour, as strong as it takes', () => {
    const wanted = [coloured('blue', 2), coloured('sienna', 3)] as const;
    const marks = chosen([...darks, shape(wanted[0]), shape(wanted[1])], ['blue', 'sienna']);
    const details = marks.filter(({ kind }) => kind === 'detail');
    expect(details.map(({ shape: n, mix: id }) => [n, id]).sort()).toEqual([
      [3, 'mix-blue'],
      [4, 'mix-sienna'],
    ]);
    expect(details.find(({ shape: n }) => n === 3)?.load).toBeCloseTo(2, 1);
    for (const { shape: n, lab } of details) {
      for (const c of [0, 1, 2] as const) {
        expect(lab[c]).toBeCloseTo((wanted[n - 3] as Lab)[c], 0);
      }
    }
  });

  test('what gains too little, and lights, are left alone', () => {
    const there = labOfReflectance(pale);
    const marks = chosen(
      [
        shape(there),
        shape([there[0] - 1.5, there[1], there[2]]),
        shape([90, 0, 0], { isLight: true }),
      ],
      ['blue'],
    );
    expect(marks).toEqual([]);
    expect(chosen([shape([20, 0, 0])], [])).toEqual([]);
  });

  test('are at most 48, those that matter most first', () => {
    const many = Array.from({ length: 90 }, (_, n) =>
      shape(coloured('blue', 2), { areaMm2: 10 + n, near: 1 }),
    );
    const marks = chosen([...many, ...darks], ['blue']);
    const details = marks.filter(({ kind }) => kind === 'detail');
    expect(details).toHaveLength(48);
    expect(Math.min(...details.map(({ shape: n }) => n))).toBeGreaterThan(35);
    expect(details[0]?.shape).toBe(89);
  });

  test('need three puddles at most, those that bring most together', () => {
    const names: Name[] = ['yellow', 'blue', 'sienna', 'umber'];
    const shapes = names.flatMap((name, n) =>
      Array.from({ length: n === 0 ? 1 : 10 }, () => shape(coloured(name, 4))),
    );
    const marks = chosen([...shapes, ...darks], names);
    const used = new Set(marks.flatMap(({ kind, mix: id }) => (kind === 'detail' ? [id] : [])));
    expect([...used].sort()).toEqual(['mix-blue', 'mix-sienna', 'mix-umber']);
  });

  test('nothing is laid thicker than butter or a full coat', () => {
    for (const { load, mix: id } of chosen(darks, ['blue', 'umber'])) {
      const { coat } = spectraOf(mix((id ?? '').slice(4)));
      expect(load).toBeLessThanOrEqual(Math.min(butterFrom, coat) * 1.005);
    }
  });
});

describe('accents', () => {
  const accentsOf = (shapes: readonly Detail[]) =>
    chosen(shapes, ['blue', 'umber'])
      .filter(({ kind }) => kind === 'accent')
      .map(({ shape: n }) => n);

  test('are the darkest: three at least, one for five, seven at most', () => {
    const of = (count: number) =>
      accentsOf(Array.from({ length: count }, (_, n) => shape([60 - (n % 60) / 2, 0, 0]))).length;
    expect([2, 10, 25, 60].map(of)).toEqual([2, 3, 5, 7]);
    const lightnesses = [50, 30, 60, 28, 45, 26, 55];
    expect(accentsOf(lightnesses.map((l) => shape([l, 0, 0])))).toEqual([5, 3, 1]);
  });

  test('a lighter one near the centre of interest comes before a darker one far off', () => {
    const far = { near: 0.3 };
    expect(
      accentsOf([
        shape([30, 0, 0], far),
        shape([35, 0, 0]),
        shape([29, 0, 0], far),
        shape([34, 0, 0]),
        shape([33, 0, 0]),
      ]),
    ).toEqual([4, 3, 1]);
  });

  test('are set from the darkest puddles, though a lighter one were nearer in colour', () => {
    const [, a, b] = coloured('sienna', 8);
    const marks = chosen([shape([40, a, b]), shape([42, a, b])], ['yellow', 'sienna', 'blue']);
    expect(marks.filter(({ kind }) => kind === 'accent').map(({ mix: id }) => id)).not.toContain(
      'mix-yellow',
    );
    const dark = chosen([shape([30, 0, 0])], ['yellow', 'blue']);
    expect(dark.map(({ mix: id }) => id)).toEqual(['mix-blue']);
  });

  test('are small, and clearly darker than what they are set on', () => {
    const [l, a, b] = labOfReflectance(pale);
    expect(accentsOf([shape([30, 0, 0], { areaMm2: 61 }), shape([l - 5, a, b])])).toEqual([]);
    expect(accentsOf([shape([30, 0, 0], { areaMm2: 60 })])).toEqual([0]);
  });
});

test('the bare paper lies underneath like anything else', () => {
  const [mark] = chooseMarks({
    shapes: [shape([30, 0, 0])],
    underneathOf: () => ({
      reflectance: defaultPaper,
      lightness: labOfReflectance(defaultPaper)[0],
    }),
    mixes: [mix('umber')],
    spectraOf,
    range,
  });
  expect(mark?.lab[0]).toBeLessThan(40);
});
