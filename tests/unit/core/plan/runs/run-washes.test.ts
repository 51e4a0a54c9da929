import { describe, expect, it, test } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import { type Lab, labOfRgb } from '../../../../../app/core/colour/lab.ts';
import { LastAnswers } from '../../../../../app/core/numeric/memo.ts';
import { colourOfWashes, defaultPaperLab } from '../../../../../app/core/paint/colour-of-washes.ts';
import { creamFrom } from '../../../../../app/core/paint/consistency.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import type { Mix } from '../../../../../app/core/plan/plan.ts';
import { runWashes } from '../../../../../app/core/plan/runs/run-washes.ts';
import { readPicture } from '../../../../../app/core/reading/read-picture.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { toneRange } from '../../../../../app/core/reading/tone-range.ts';
import { fewPaints } from '../../../../support/few-paints.ts';
import { rasterOf } from '../../../../support/reading/plain-raster.ts';
import { meanOfSlots, paintedRows } from '../../../../support/simulated-painter.ts';

const [sienna, blue] = ['pbr7-burnt-sienna', 'pb29-ultramarine-blue'] as const;
const paints = paintBox.filter(({ id }) => id === sienna || id === blue);
const first = paints.slice(0, 1);
const firstId = first[0]?.id ?? '';
const range = toneRange('photographed', 20, 95, 20, defaultPaperLab[0]);

/** A sheet of 24 squares in a row, as wide as they are high; what slot 0 is to look like in each. */
const across = 24;
const ramp = (colourAt: (part: number) => Lab, slot = 0) => ({
  slots: new Array<number>(across).fill(slot),
  squares: Array.from({ length: across }, (_, n) => n),
  shares: new Array<number>(across).fill(1),
  colours: Array.from({ length: across }, (_, n) => [...colourAt(n / (across - 1))]).flat(),
});

const slotOf = (band: number, family: number, lab: Lab): Slot =>
  ({ band, family, passage: 'sheet', share: 0.5, lab, target: lab }) as Slot;

const mixOf = (id: string, wash: number, family: number, paint: string, load: number): Mix => ({
  ...{ id, puddle: id, wash, passage: 'sheet', family, parts: [{ paint, parts: 1 }], load },
  ...{ consistency: 'milk', target: null, expected: [0, 0, 0], expectedWet: [0, 0, 0] },
});

const washOf = (slots: readonly number[], ...mixes: string[]) =>
  ({ kind: 'wash', slots, mixes, technique: 'wet on dry' }) as const;

const input = (squares: ReturnType<typeof ramp>, slots: readonly Slot[]) => ({
  squares: { across, down: 1, sidePx: 20, ...squares },
  squareMm: 5,
  range,
  slots,
  paints,
  washes: 3,
  even: new Set<string>(),
});

/** What a list surely has. */
const at = <T>(list: ArrayLike<T>, n: number): T => list[n] as T;

const rowLab = (look: Uint8ClampedArray, row: number): Lab =>
  labOfRgb([at(look, 3 * row), at(look, 3 * row + 1), at(look, 3 * row + 2)]);

describe('washes that run', () => {
  // From a pale to a strong wash of one paint.
  const graded = ramp((part) =>
    colourOfWashes([{ paints: first, parts: [1], load: 0.6 + 4 * part }]),
  );
  const middle: Lab = [60, 5, 5];
  const mix = mixOf('a', 1, 1, firstId, 2);
  const placed = [{ mix, slots: [0] }];

  it('grades one puddle by strength', () => {
    const { runs, looks } = runWashes(
      [washOf([0], 'a')],
      placed,
      input(graded, [slotOf(1, 1, middle)]),
    );
    const { own } = at(runs, 0);
    const [start, end] = [at(own, 0), at(own, across - 1)];
    expect(end).toBeGreaterThan(2 * start);
    const gaps = graded.squares.map((row) =>
      colourDifference(rowLab(at(looks, 0), row), [
        at(graded.colours, 3 * row),
        at(graded.colours, 3 * row + 1),
        at(graded.colours, 3 * row + 2),
      ]),
    );
    expect(gaps.reduce((all, gap) => all + gap, 0) / gaps.length).toBeLessThan(2);
    // No finer than a brush paints it: from square to square a small part of the whole way.
    for (let n = 1; n < across; n++) {
      expect(Math.abs(at(own, n) - at(own, n - 1))).toBeLessThan(0.15 * (end - start) + 0.05);
    }
  });

  it('lets in what a mix is to meet where the hue asks for it', () => {
    const toBlue = ramp((part) =>
      colourOfWashes([
        {
          paints: [...paints],
          parts: paints.map(({ id }) => (id === blue ? part : 1 - part)),
          load: 3,
        },
      ]),
    );
    const other = mixOf('b', 1, 2, blue, 3);
    const meets = { parts: other.parts, puddle: 'b' };
    const own = { ...mixOf('a', 1, 1, sienna, 3), meets };
    const both = {
      ...toBlue,
      slots: [...toBlue.slots, 1],
      squares: [...toBlue.squares, 0],
      shares: [...toBlue.shares, 0.2],
      colours: [...toBlue.colours, 50, 10, -40],
    };
    const slots = [slotOf(1, 1, middle), slotOf(1, 2, [50, 10, -40])];
    const rows = [
      { mix: own, slots: [0] },
      { mix: other, slots: [1] },
    ];
    const { runs } = runWashes([washOf([0, 1], 'a', 'b')], rows, input(both, slots));
    const run = at(runs, 0);
    expect(run.meets).toEqual(meets);
    expect(at(run.other, across - 1)).toBeGreaterThan(at(run.other, 0));
    expect(at(run.own, across - 1)).toBeLessThan(at(run.own, 0));
  });

  it('a first wash is never thicker than milk', () => {
    const dark = ramp(() => [25, 10, 8]);
    const { runs } = runWashes(
      [washOf([0], 'a')],
      placed,
      input(dark, [slotOf(1, 1, [25, 10, 8])]),
    );
    for (const load of at(runs, 0).own) expect(load).toBeLessThanOrEqual(creamFrom + 1e-6);
  });

  it('remembers only what would come out alike', () => {
    const darker = mixOf('b', 2, 1, firstId, 4);
    const rows = [...placed, { mix: darker, slots: [0] }];
    const slots = [slotOf(1, 1, middle)];
    const both = [washOf([0], 'a'), washOf([0], 'b')];
    const given = input(graded, slots);
    const brushed = { ...washOf([0], 'b'), technique: 'dry brush' } as const;
    const heavier = rows.map((row) => ({ ...row, mix: { ...row.mix, load: row.mix.load * 1.5 } }));
    const meets = { parts: [{ paint: blue, parts: 1 }], puddle: null };
    const meeting = [{ mix: { ...mix, meets }, slots: [0] }, ...rows.slice(1)];
    const dull = ramp((part) => colourOfWashes([{ paints, parts: [1, 1], load: 0.6 + part }]));
    const cases: Parameters<typeof runWashes>[] = [
      [both, rows, given],
      [[washOf([0], 'a')], rows, given],
      [[washOf([0], 'b'), washOf([0], 'a')], rows, given],
      [[washOf([0], 'a'), brushed], rows, given],
      [both, heavier, given],
      [both, meeting, given],
      [both, rows, { ...given, even: new Set(['a']) }],
      [both, rows, { ...given, washes: 2 }],
      [both, rows, input(dull, slots)],
      [both, rows, input(graded, [slotOf(1, 1, [50, 8, 9])])],
      [both, rows, { ...given, range: toneRange('photographed', 20, 95, 30, defaultPaperLab[0]) }],
      [
        both,
        rows,
        {
          ...given,
          paints: [...first, ...paints.slice(1)].map((paint) => ({
            ...paint,
            strength: 2,
            revision: 99,
          })),
        },
      ],
    ];
    const memory = { laid: new LastAnswers<never>(4), amounts: new LastAnswers<never>(96) };
    const told = ({ runs, looks, after }: ReturnType<typeof runWashes>) =>
      JSON.stringify([runs, looks, after]);
    const alone = cases.map((each) => told(runWashes(...each)));
    expect(new Set(alone).size).toBeGreaterThan(cases.length / 2); // some changes come to nothing here
    for (const round of [1, 2]) {
      const again = cases.map(([steps, from, to]) => told(runWashes(steps, from, to, memory)));
      expect([round, again.flatMap((one, n) => (one === alone[n] ? [] : [n]))]).toEqual([
        round,
        [],
      ]);
    }
  });

  it('what she changed lies as even as she asked for', () => {
    const given = { ...input(graded, [slotOf(1, 1, middle)]), even: new Set(['a']) };
    const { runs } = runWashes([washOf([0], 'a')], placed, given);
    expect(new Set(at(runs, 0).own)).toEqual(new Set([2]));
  });

  it('steps that paint nothing leave the sheet as it was', () => {
    const dry = { kind: 'dry', slots: [0], mixes: [], technique: 'none' } as const;
    const steps = [dry, washOf([0], 'a'), dry];
    const { looks, after } = runWashes(steps, placed, input(graded, [slotOf(1, 1, middle)]));
    expect(colourDifference(at(at(after, 0), 0), defaultPaperLab)).toBeLessThan(0.01);
    expect(looks[2]).toBe(looks[1]);
    expect(after[2]).toBe(after[1]);
  });

  it('a dry brush leaves specks of what lies there', () => {
    const given = { ...input(graded, [slotOf(1, 1, middle)]), even: new Set(['a']) };
    const brushed = { ...washOf([0], 'a'), technique: 'dry brush' } as const;
    const [whole, specks] = [washOf([0], 'a'), brushed].map(
      (step) => at(at(runWashes([step], placed, given).after, 0), 0)[0],
    ) as [number, number];
    expect(specks).toBeGreaterThan(whole + 3);
    expect(specks).toBeLessThan(defaultPaperLab[0] - 3);
  });

  it('a wash goes on stronger under what is to end dark, as far as the washes to come need it', () => {
    const under: Mix = { ...mix, expected: [80, 5, 20] };
    const steps = [washOf([0], 'a'), washOf([0], 'c')];
    const rows = [
      { mix: under, slots: [0] },
      { mix: mixOf('c', 2, 1, blue, 6), slots: [0] },
    ];
    const laidUnder = (target: Lab, washes: number): number => {
      const given = {
        ...input(
          ramp(() => target),
          [slotOf(2, 1, target)],
        ),
        washes,
      };
      const { runs } = runWashes(steps, rows, given);
      return at(at(runs, 0).own, across / 2);
    };
    const [, a, b] = colourOfWashes([{ paints: first, parts: [1], load: 10 }]);
    expect(laidUnder([28, a, b], 2)).toBeGreaterThan(mix.load + 1);
    expect(laidUnder([28, a, b], 4)).toBeLessThan(laidUnder([28, a, b], 2) - 0.5);
    expect(laidUnder([40, a, b], 2)).toBe(mix.load);
  });

  it('a later wash goes over what the first left', () => {
    const darker = mixOf('c', 2, 1, blue, 2);
    const steps = [washOf([0], 'a'), washOf([0], 'c')];
    const rows = [...placed, { mix: darker, slots: [0] }];
    const deep = ramp(() => [40, 8, -20]);
    const { after } = runWashes(steps, rows, input(deep, [slotOf(2, 1, [40, 8, -20])]));
    const lightness = [0, 1].map((step) => at(at(after, step), 0)[0]);
    expect(at(lightness, 1)).toBeLessThan(at(lightness, 0));
    expect(Math.abs(at(lightness, 1) - 40)).toBeLessThan(3);
  });
});

test('what lies under a wash counts by how much of a square it covers', () => {
  const dark = colourOfWashes([{ paints: first, parts: [1], load: 6 }]);
  const all = ramp(() => dark);
  const [under, over] = [mixOf('a', 1, 1, firstId, 4), mixOf('b', 2, 1, firstId, 4)];
  const slots = [slotOf(1, 1, dark), slotOf(2, 1, dark)];
  /** How much is laid over both slots where the first has paint under it already, and such a part of every square. */
  const laidOver = (part: number): number => {
    const both = {
      slots: [...all.slots, ...all.slots.map(() => 1)],
      squares: [...all.squares, ...all.squares],
      shares: [...all.shares.map(() => part), ...all.shares.map(() => 1 - part)],
      colours: [...all.colours, ...all.colours],
    };
    const { runs } = runWashes(
      [washOf([0], 'a'), washOf([0, 1], 'b')],
      [
        { mix: under, slots: [0] },
        { mix: over, slots: [0, 1] },
      ],
      input(both, slots),
    );
    return at(at(runs, 1).own, across / 2);
  };
  // The more of it has paint already, the less is laid over all of it.
  expect(laidOver(0.1)).toBeGreaterThan(laidOver(0.5) + 1);
  expect(laidOver(0.5)).toBeGreaterThan(laidOver(0.9) + 1);
});

test('a second painter who follows the runs gets what the plan shows', async () => {
  const size = { width: 240, height: 160 };
  // Hills under a sky: two hues, each running from light to dark.
  const raster = rasterOf(size.width, size.height, (x, y) =>
    y < 70 ? [88 - x / 12, -2, -6 - y / 5] : [62 - x / 8, -6, 14 + y / 12],
  );
  const { reading } = await readPicture(
    {
      ...{ raster, clipped: { light: 0, dark: 0 }, sheet: { widthMm: 120, heightMm: 80 } },
      ...{ wishes: {}, darkest: 25, paper: defaultPaperLab[0] },
    },
    noCheckpoint,
  );
  const plan = await buildPlan(reading, { box: fewPaints }, noCheckpoint);
  const { squares } = reading;
  if (!squares || !plan.runs) throw new Error('nothing runs');
  const steady = { strength: 0, ratio: 0, spread: 'normal' } as const;
  const painted = meanOfSlots(
    plan,
    paintedRows(plan, squares, steady, () => 0.5),
  );
  const last = plan.steps.at(-1)?.after ?? [];
  for (const [i, lab] of painted.entries()) {
    expect(colourDifference(lab, at(last, i)), `slot ${i}`).toBeLessThan(0.01);
  }
});
