import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import type { Mix } from '../../../../../app/core/plan/plan.ts';
import { GroupAims } from '../../../../../app/core/plan/runs/group-aims.ts';
import type { RunInput } from '../../../../../app/core/plan/runs/run.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

const [plainSlot] = madeReading(tableOf([50], [[0, 0]])).slots as [Slot];
const slotOf = (lab: Lab, target = lab): Slot => ({ ...plainSlot, lab, target });

interface Row {
  readonly square: number;
  readonly slot: number;
  readonly share: number;
  readonly colour: Lab;
}

/** Aims over three squares in a line, so wide that next to nothing runs from one into the next; values stay as photographed. */
function aimsOver(rows: readonly Row[], slots: readonly Slot[], squareMm = 1000, washes = 2) {
  const input: RunInput = {
    squares: {
      ...{ across: 3, down: 1, sidePx: 10 },
      slots: rows.map(({ slot }) => slot),
      squares: rows.map(({ square }) => square),
      shares: rows.map(({ share }) => share),
      colours: rows.flatMap(({ colour }) => [...colour]),
    },
    range: { mode: 'photographed', lo: 0, hi: 100, dark: 0, paper: 96, knee: 0 },
    ...{ squareMm, slots, washes, paints: [], even: new Set<string>() },
  };
  return new GroupAims(input);
}

const mixOf = (wash: number, lightness = 65) =>
  ({ wash, expected: [lightness, 0, 0] }) as never as Mix;
const groupOf = (rows: readonly number[], mix = mixOf(1)) =>
  ({ rows, mix }) as never as Parameters<GroupAims['of']>[0];

const light = slotOf([65, 5, 5]);
const dark = slotOf([20, 3, -3]);
const rows: Row[] = [
  { square: 0, slot: 0, share: 1, colour: [60, 10, -10] },
  { square: 1, slot: 1, share: 1, colour: [20, 4, -4] },
  { square: 2, slot: 0, share: 0.5, colour: [70, 6, 2] },
];
/** L*, a*, b* in a square, as wanted but for what runs in from beside it: a hundredth of the difference. */
function expectAt(aim: readonly Float32Array[], square: number, wanted: Lab): void {
  for (const [c, plane] of aim.entries())
    expect(Math.abs((plane[square] ?? Number.NaN) - (wanted[c] ?? 0))).toBeLessThan(0.4);
}

// Figures are (own): the docstrings of what is tested say why.
describe('what a wash is to show, square by square', () => {
  test('the colours of the shapes it finishes; under a dark it goes on, 11 L* above it for each wash to come', () => {
    const aim = aimsOver(rows, [light, dark]).of(groupOf([0, 1, 2]), new Set([0, 2]));
    expectAt(aim, 0, [60, 10, -10]);
    expectAt(aim, 2, [70, 6, 2]);
    expectAt(aim, 1, [20 + 11, 4, -4]);
    const ofThree = aimsOver(rows, [light, dark], 1000, 3);
    expectAt(ofThree.of(groupOf([0, 1, 2]), new Set([0, 2])), 1, [20 + 22, 4, -4]);
  });

  test('under what ends at 35 L* or lighter it is as light as what it finishes on the mean, by area', () => {
    const mean = (60 + 0.5 * 70) / 1.5;
    for (const [lightness, wanted] of [
      [35.1, mean],
      [34.9, 34.9 + 11],
    ] as const) {
      const middle = rows.with(1, { square: 1, slot: 1, share: 1, colour: [lightness, 0, 0] });
      const aims = aimsOver(middle, [light, slotOf([lightness, 0, 0])]);
      expectAt(aims.of(groupOf([0, 1, 2]), new Set([0, 2])), 1, [wanted, 0, 0]);
    }
    // It finishes nothing: then as light as its mix is expected.
    const middle = rows.with(1, { square: 1, slot: 1, share: 1, colour: [50, 0, 0] });
    const aims = aimsOver(middle, [light, slotOf([50, 0, 0])]);
    expect(aims.of(groupOf([1], mixOf(1, 62)), new Set())[0]?.[1]).toBeCloseTo(62, 3);
  });

  test('what she changed of a shape holds for all its squares', () => {
    const lifted = slotOf([65, 5, 5], [71, 2, 9]);
    const aim = aimsOver(rows, [lifted, dark]).of(groupOf([0, 2]), new Set([0, 2]));
    expectAt(aim, 0, [66, 7, -6]);
    expectAt(aim, 2, [76, 3, 6]);
  });

  test('in one square the shapes share by area; what is not finished counts 7 in 100', () => {
    const both: Row[] = [
      { square: 0, slot: 0, share: 0.3, colour: [60, 0, 0] },
      { square: 0, slot: 0, share: 0.1, colour: [80, 20, 0] },
      { square: 0, slot: 1, share: 0.6, colour: [30, 0, 40] },
    ];
    const slots = [light, slotOf([30, 0, 40])];
    const aim = aimsOver(both, slots).of(groupOf([0, 1, 2]), new Set([0, 1]));
    const all = 0.4 + 0.6 * 0.07;
    expect(aim[0]?.[0]).toBeCloseTo((0.3 * 60 + 0.1 * 80 + 0.042 * 41) / all, 3);
    expect(aim[1]?.[0]).toBeCloseTo((0.1 * 20) / all, 3);
    expect(aim[2]?.[0]).toBeCloseTo((0.042 * 40) / all, 3);
  });
});

test('a wash says itself how it runs where it finishes shapes, or its mix stays too light under darks', () => {
  const aims = aimsOver(rows, [light, dark]);
  expect(aims.has(groupOf([1], mixOf(1, 30.9)), [])).toBe(false);
  expect(aims.has(groupOf([1], mixOf(1, 31.1)), [])).toBe(true);
  expect(aims.has(groupOf([1], mixOf(2, 31.1)), [])).toBe(true);
  expect(aims.has(groupOf([0, 2], mixOf(1, 95)), [])).toBe(false); // no darks there
  expect(aims.has(groupOf([0, 1, 2], mixOf(1, 31.1)), [])).toBe(true);
  expect(aims.has(groupOf([0], mixOf(1, 20)), [0])).toBe(true);
});

// Source: the normal distribution rises from a tenth to nine tenths over 2 x 1.2816 standard deviations.
test('an edge in it rises over 15 mm, in the second wash over 10, in later ones over 6', () => {
  const aims = aimsOver(rows, [light, dark], 5);
  for (const [n, mm] of [15, 10, 6, 6].entries())
    expect(2 * 1.2816 * 5 * aims.sigmaOf(mixOf(n + 1))).toBeCloseTo(mm, 1);
});

test('colours of neighbours run into each other, but not out of nothing', () => {
  const two: Row[] = [
    { square: 0, slot: 0, share: 1, colour: [60, 10, 0] },
    { square: 1, slot: 0, share: 1, colour: [70, 0, 0] },
  ];
  const [l, a] = aimsOver(two, [light], 5).of(groupOf([0, 1]), new Set([0, 1])) as [
    Float32Array,
    Float32Array,
  ];
  expect(l[0]).toBeGreaterThan(61);
  expect(l[0]).toBeLessThan(l[1] as number);
  expect(l[1]).toBeLessThan(69);
  expect(a[0]).toBeLessThan(9);
  expect(a[1]).toBeGreaterThan(1);
  // The third square, which is empty, darkens none of them.
  expect(Math.min(l[0] as number, l[1] as number)).toBeGreaterThan(60);
});
