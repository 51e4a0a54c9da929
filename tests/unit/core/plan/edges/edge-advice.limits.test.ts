import { describe, expect, test } from 'vitest';
import {
  adviseOnEdges,
  adviseOnPassageLine,
  mergedWhere,
} from '../../../../../app/core/plan/edges/edge-advice.ts';
import type { Border } from '../../../../../app/core/reading/reading.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { border, type MadeSlot, madeFacts } from '../../../../support/plan/made-work.ts';

// From where on an edge is worth a word: at the limit and just short of it. The figures are this project's own (see
// the docstrings of each).
const white: MadeSlot = { lightness: 96, band: 1, family: 4, reserve: true };
const green: MadeSlot = { lightness: 60, family: 1 };
const brown: MadeSlot = { lightness: 55, family: 2 };
const facts = (...borders: Border[]) =>
  madeFacts({ slots: [white, green, brown], borders, washes: { sheet: [[1, 2]] } });
const wash = [1, 2];
const edge = (
  lengthMm: number,
  soft: number,
  lost = 0,
  between: readonly [number, number] = [0, 1],
) => border(...between, { lengthMm, soft, lost });

describe('an edge to soften', () => {
  const isNamed = (lengthMm: number, soft: number): boolean => {
    const made = facts(edge(lengthMm, soft));
    return /soften these edges/.test(
      words(adviseOnEdges(made, made.passages[0]?.washes[0]?.slots ?? [])),
    );
  };
  test('is soft along four tenths of it, and 15 mm', () => {
    expect([isNamed(100, 0.4), isNamed(100, 0.39)]).toEqual([true, false]);
    expect([isNamed(37.5, 0.4), isNamed(37.4, 0.4)]).toEqual([true, false]);
  });
});

describe('an edge of a wetted wash that the water stops short of', () => {
  const isNamed = (...borders: Border[]): boolean =>
    /stay crisp/.test(words(adviseOnEdges(facts(...borders), wash, true)));

  test('is hard along six tenths of it, and 40 mm', () => {
    expect([isNamed(edge(100, 0.2, 0.2)), isNamed(edge(100, 0.2, 0.21))]).toEqual([true, false]);
    expect([isNamed(edge(50, 0.1, 0.1)), isNamed(edge(49.9, 0.1, 0.1))]).toEqual([true, false]);
  });

  test('has no border of these colours that is soft along four tenths', () => {
    // Twice the one is hard enough for both together.
    const [long, short] = [edge(400, 0), edge(30, 0.4)];
    expect([isNamed(long, short), isNamed(long, edge(30, 0.39))]).toEqual([false, true]);
    expect(isNamed(long, edge(30, 0.4, 0, [0, 2]))).toBe(true);
  });
});

test('colours are painted in one go that are lost in each other along six tenths of their border, and 30 mm', () => {
  const pairs = (lengthMm: number, lost: number): number =>
    mergedWhere(facts(edge(lengthMm, 0, lost, [1, 2])), wash, []).pairs.length;
  expect([pairs(100, 0.6), pairs(100, 0.59)]).toEqual([1, 0]);
  expect([pairs(50, 0.6), pairs(49.9, 0.6)]).toEqual([1, 0]);
  const run = facts(edge(100, 0, 0.9, [1, 2]));
  expect(mergedWhere(run, wash, [], [[1, 2]]).pairs).toEqual([]);
  expect(mergedWhere(run, wash, [], [[2, 7]]).pairs).toHaveLength(1);
});

describe('the line between ground and subject painted together', () => {
  const together = (
    borders: readonly Border[],
    subject: MadeSlot = brown,
    more: readonly MadeSlot[] = [],
  ) =>
    madeFacts({
      slots: [
        { ...green, passage: 'ground' },
        { ...subject, passage: 'subject' },
        ...more.map((slot) => ({ ...slot, passage: 'subject' }) as MadeSlot),
      ],
      borders,
      washes: { sheet: [[0, 1, 2, 3], [1]] },
    });
  const advice = (borders: readonly Border[], later = 1, ...rest: [MadeSlot?, MadeSlot[]?]) => {
    const made = together(borders, ...rest);
    return words(
      adviseOnPassageLine(made, [0, 1, 2, 3], made.passages[0]?.washes.slice(later) ?? []),
    );
  };
  const line = (lengthMm: number, soft: number, lost = 0) => [edge(lengthMm, soft, lost)];

  test('is to be stopped at where it is crisp along six tenths of it, and 40 mm', () => {
    expect(advice(line(100, 0.2, 0.2), 2)).toBe(
      'The line is crisp between the dull green and the brown: stop at it, and leave a hair of paper dry there.',
    );
    expect(advice(line(100, 0.2, 0.21), 2)).toBe('');
    expect(advice(line(50, 0.2), 2)).not.toBe('');
    expect(advice(line(49.9, 0.2), 2)).toBe('');
  });

  test('not of one colour, nor where a later wash goes over it, nor of a single paint', () => {
    expect(advice(line(100, 0), 2, { ...brown, family: 1 })).toBe('');
    expect(advice(line(100, 0), 1)).toBe('');
    const made = together(line(100, 0));
    const single = { ...made, paints: made.paints.slice(0, 1) };
    expect(adviseOnPassageLine(single, [0, 1], [])).toEqual([]);
    expect(adviseOnPassageLine(made, [0, 1], [])).toHaveLength(1);
  });

  test('two places are named, the longest', () => {
    const others = [
      { lightness: 40, family: 3 },
      { lightness: 40, family: 4 },
    ];
    const borders = [edge(60, 0, 0, [0, 1]), edge(90, 0, 0, [0, 2]), edge(80, 0, 0, [0, 3])];
    expect(advice(borders, 2, brown, others)).toMatch(
      /between the dull green and the blue, and between the dull green and the ochre:/,
    );
  });
});
