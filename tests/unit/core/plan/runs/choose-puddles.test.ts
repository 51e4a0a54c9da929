import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import {
  colourOfWashes,
  defaultPaper,
  defaultPaperLab,
} from '../../../../../app/core/paint/colour-of-washes.ts';
import { mixSpectra } from '../../../../../app/core/paint/layer.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import type { Mix } from '../../../../../app/core/plan/plan.ts';
import type { SolvedPassage } from '../../../../../app/core/plan/plan-facts.ts';
import { choosePuddles } from '../../../../../app/core/plan/runs/choose-puddles.ts';
import type { PairPoint } from '../../../../../app/core/plan/runs/pair-judge.ts';
import { pairOptions, sharePairs } from '../../../../../app/core/plan/runs/share-pairs.ts';
import { missedBy, WantedPaint } from '../../../../../app/core/plan/runs/wanted-paint.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { toneRange } from '../../../../../app/core/reading/tone-range.ts';

const ids = ['pbr7-burnt-sienna', 'pb29-ultramarine-blue', 'py43-yellow-ochre'] as const;
const paints = ids.flatMap((id) => paintBox.filter((paint) => paint.id === id));
const white = { reflectance: Float64Array.from(defaultPaper), lightness: defaultPaperLab[0] };
const wantedPaint = () => new WantedPaint(paints.map((paint) => mixSpectra([paint], [1])));

/** Colour of so much of each paint on the paper. */
const mingled = (amounts: readonly number[]): Lab =>
  colourOfWashes([{ paints, parts: amounts, load: amounts.reduce((all, each) => all + each, 0) }]);

describe('paint that a square wants', () => {
  // The answer is known: what was laid is found again.
  it.each([[[2, 1, 0.5]], [[0.5, 0.05, 2]], [[3, 3, 1]]])(
    'is found again from the colour of %j ml',
    (laid) => {
      const paint = wantedPaint();
      paint.solve(white, mingled(laid), 14);
      const gap = colourDifference(mingled(Array.from(paint.amounts)), mingled(laid));
      expect(gap).toBeLessThan(0.3);
      for (const amount of paint.amounts) expect(amount).toBeGreaterThanOrEqual(0);
    },
  );

  it('keeps to what may lie there', () => {
    const paint = wantedPaint();
    paint.solve(white, [15, 2, 0], 8);
    expect(paint.amounts.reduce((all, each) => all + each, 0)).toBeLessThanOrEqual(8 + 1e-9);
    // All of it goes where it darkens most: ochre would only take the room.
    expect(paint.amounts[2]).toBeLessThan(0.5);
  });

  it('tells how the colour moves: a little more of a paint does as its slope says', () => {
    const paint = wantedPaint();
    paint.solve(white, mingled([2, 1, 0.5]), 14);
    expect(paint.slopes).toHaveLength(3 * missedBy);
    // More of any paint makes it darker: the fourth figure is lightness.
    for (let p = 0; p < 3; p++) expect(paint.slopes[p * missedBy + 3]).toBeLessThan(0);
  });
});

const pointOf = (family: number, laid: readonly number[]): PairPoint => {
  const paint = wantedPaint();
  paint.solve(white, mingled(laid), 14);
  const [wanted, slopes] = [Float64Array.from(paint.wanted), Float64Array.from(paint.slopes)];
  return { family, wanted, slopes, most: 14, weight: 1 };
};

const options = pairOptions(paints.length);
const nameOf = (n: number): string => {
  const { members, parts } = options[n] as (typeof options)[number];
  return members.map((member, k) => `${parts[k]} ${ids[member]}`).join(' + ');
};

describe('puddles that families share', () => {
  const to = (one: readonly number[], other: readonly number[], family: number): PairPoint[] =>
    [0, 0.25, 0.5, 0.75, 1].map((part) =>
      pointOf(
        family,
        one.map((amount, p) => amount + part * ((other[p] as number) - amount)),
      ),
    );

  it('runs a family from one paint into the other where its places ask for both', () => {
    const pairs = sharePairs(to([3, 0, 0], [0, 3, 0], 0), options, 1, 3, new Set());
    const [own] = pairs.own as [number];
    const [meets] = pairs.meets as [number];
    const paintsUsed = new Set([own, meets].flatMap((n) => options[n]?.members ?? []));
    expect([...paintsUsed].sort()).toEqual([0, 1]);
    // A puddle that is nobody's own is a paint by itself: nothing to mix for it.
    expect(options[meets]?.members).toHaveLength(1);
  });

  it('one puddle is enough where strength alone changes', () => {
    const pairs = sharePairs(to([0.5, 0.5, 0], [3, 3, 0], 0), options, 1, 3, new Set());
    expect(pairs.meets).toEqual([null]);
    expect(nameOf(pairs.own[0] as number)).toBe('1 pbr7-burnt-sienna + 1 pb29-ultramarine-blue');
  });

  it.each([1, 2, 3])('never has more than %i puddles', (most) => {
    const points = [
      ...to([3, 0, 0], [0, 3, 0], 0),
      ...to([0, 0, 3], [0, 2, 2], 1),
      ...to([2, 2, 0], [2, 0, 3], 2),
    ];
    const pairs = sharePairs(points, options, 3, most, new Set());
    const used = new Set([...pairs.own, ...pairs.meets.filter((n) => n !== null)]);
    expect(used.size).toBeLessThanOrEqual(most);
    for (const n of pairs.meets) {
      if (n === null || options[n]?.members.length === 1) continue;
      expect(pairs.own).toContain(n);
    }
  });

  it('a puddle that only meets others becomes the name of the family that takes most of it', () => {
    const puddle = [1.5, 1.5, 0];
    const some = (family: number, part: number): PairPoint[] => [
      ...to(
        [0, 0, 4],
        puddle.map((amount) => amount * part),
        family,
      ),
    ];
    // Two families of ochre: hardly any of the grey runs into the first, much into the second.
    const points = [...some(0, 0.4), ...some(1, 1)];
    const pairs = sharePairs(points, options, 2, 2, new Set());
    const isGrey = (n: number | null | undefined): boolean =>
      n !== null && n !== undefined && !nameOf(n).includes(ids[2]);
    expect(pairs.own.map(isGrey)).toEqual([false, true]);
  });
});

describe('choosing puddles for washes that run', () => {
  const range = toneRange('photographed', 20, 95, 20, defaultPaperLab[0]);
  const across = 24;
  const colours = Array.from({ length: across }, (_, n) =>
    mingled([3 - (3 * n) / (across - 1), (3 * n) / (across - 1), 0]),
  );
  const mean = [0, 1, 2].map(
    (c) => colours.reduce((sum, lab) => sum + (lab[c] as number), 0) / across,
  ) as unknown as Lab;
  const slots = [
    { band: 1, family: 1, passage: 'sheet', share: 1, lab: mean, target: mean },
  ] as unknown as Slot[];
  const even = new Array<number>(across).fill(0);
  const squares = {
    ...{ across, down: 1, sidePx: 20, slots: even, squares: even.map((_, n) => n) },
    ...{ shares: even.map(() => 1), colours: colours.flat() },
  };
  const grey = {
    ...{ id: 'sheet/1/1', puddle: 'A', wash: 1, passage: 'sheet', family: 1, load: 3 },
    ...{ parts: [{ paint: ids[0], parts: 1 }], consistency: 'milk', target: mean },
    ...{ expected: mean, expectedWet: mean },
  } as Mix;
  const solved: SolvedPassage = {
    passage: 'sheet',
    washes: [{ wash: 1, weak: [], full: [1], mixes: [grey], slots: [0], after: [mean] }],
  };
  const input = { squares, squareMm: 5, range, slots, paints, washes: 1, even: new Set<string>() };
  const [passage] = choosePuddles([solved], input, 3);
  const wash = passage?.washes[0];
  const mix = wash?.mixes[0] as Mix;

  it('takes the two the colours run between, and names them', () => {
    const used = [...mix.parts, ...(mix.meets?.parts ?? [])].map(({ paint }) => paint);
    expect([...new Set(used)].sort()).toEqual([ids[1], ids[0]]);
    expect(mix.puddle).toBe('A');
    expect(mix.meets?.puddle).toBeNull();
  });

  it('says the slot as it then is', () => {
    expect(colourDifference(wash?.after[0] as Lab, mean)).toBeLessThan(2);
  });

  it('lays what only the other puddle is wanted for: ochre light shapes, blue darker ones of one family', () => {
    const [ochre, blue] = [mingled([0, 0, 6]), mingled([0, 2, 0])];
    const isBlue = (n: number): boolean => n >= 16;
    const two = [ochre, blue].map((target, n) => ({
      ...(slots[0] as Slot),
      ...{ band: n + 1, lab: target, target, share: n === 0 ? 2 / 3 : 1 / 3 },
    }));
    const parted = {
      ...squares,
      slots: even.map((_, n) => (isBlue(n) ? 1 : 0)),
      colours: even.flatMap((_, n) => (isBlue(n) ? blue : ochre)),
    };
    const both = {
      ...grey,
      weaker: { bands: [1], load: 1, expected: ochre, expectedWet: ochre, consistency: 'tea' },
    } as unknown as Mix;
    const wash = {
      wash: 1,
      weak: [1],
      full: [2],
      mixes: [both],
      slots: [0, 1],
      after: [mean, mean],
    };
    const [chosen] = choosePuddles(
      [{ passage: 'sheet', washes: [wash] }],
      { ...input, slots: two, squares: parted },
      2,
    );
    const after = chosen?.washes[0]?.after as readonly [Lab, Lab];
    // Bare paper lies 30 away from either.
    expect(colourDifference(after[0], ochre)).toBeLessThan(6);
    expect(colourDifference(after[1], blue)).toBeLessThan(6);
  });
});
