import { describe, expect, test } from 'vitest';
import {
  type Edge,
  edgeShares,
  isNearlyAllHard,
  kindOnSheet,
} from '../../../../../app/core/reading/edges/edge.ts';
import { madeEdge } from '../../../../support/reading/made-edge.ts';

// Limits: own figures; no source gives numbers.
const long = (lengthMm: number, otherwise: Partial<Edge> = {}): Edge =>
  madeEdge([], { lengthMm, ...otherwise });

test('sharpened is hard from 10 L* between the sides on, else found', () => {
  const sharpened = (contrast: number) => kindOnSheet({ kind: 'soft', wish: 'sharpen', contrast });
  expect([9.99, 10, 10.01].map(sharpened)).toEqual(['found', 'hard', 'hard']);
});

test('shares of each kind go by length, with every stretch counted', () => {
  const edges = [long(30), long(10, { kind: 'soft' }), long(50), long(10, { kind: 'lost' })];
  expect(edgeShares(edges)).toEqual([
    { kind: 'hard', count: 2, lengthMm: 80, share: 0.8 },
    { kind: 'soft', count: 1, lengthMm: 10, share: 0.1 },
    { kind: 'found', count: 0, lengthMm: 0, share: 0 },
    { kind: 'lost', count: 1, lengthMm: 10, share: 0.1 },
  ]);
});

describe('nearly all hard, on a sheet of 300 x 200 mm', () => {
  const sheet = { widthMm: 300, heightMm: 200 };
  const isStiff = (...edges: readonly Edge[]): boolean => isNearlyAllHard(edges, sheet);

  test('is told from 250 mm of edges on, half of width and height', () => {
    expect([249, 249.5, 250, 250.5].map((mm) => isStiff(long(mm)))).toEqual([
      false,
      false,
      false,
      true,
    ]);
    expect(isStiff(long(125), long(125))).toBe(false);
    expect(isStiff(long(125), long(126))).toBe(true);
  });

  test('is more than nine tenths by length; soft, found and lost ones are relief alike', () => {
    for (const kind of ['soft', 'found', 'lost'] as const) {
      expect(isStiff(long(900), long(100, { kind }))).toBe(false);
      expect(isStiff(long(901), long(99, { kind }))).toBe(true);
    }
  });

  test('is about the sheet, not the photo: what she softens counts as soft', () => {
    expect(isStiff(long(800), long(200))).toBe(true);
    expect(isStiff(long(800), long(200, { wish: 'soften' }))).toBe(false);
  });
});
