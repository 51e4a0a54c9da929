import { describe, expect, it } from 'vitest';
import type { Meeting } from '../../../../../app/core/plan/runs/run.ts';
import { runTold } from '../../../../../app/core/plan/runs/run-words.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';

const across = 6;
const squares = Array.from({ length: 36 }, (_, n) => n);
const x = (n: number): number => n % across;
const y = (n: number): number => Math.floor(n / across);

const umber = [{ paint: 'pbr7-burnt-umber', parts: 1 }];

const said = (
  own: (n: number) => number,
  other?: (n: number) => number,
  meets: Meeting = { parts: umber, puddle: 'B' },
): string =>
  words(
    runTold(
      {
        mix: 'a',
        strength: 'full',
        ...(other && { meets }),
        squares,
        own: squares.map(own),
        other: other ? squares.map(other) : [],
      },
      across,
      'brown',
      () => 'burnt umber',
    ) ?? undefined,
  );

describe('how a mix runs, in words', () => {
  it.each([
    ['at the bottom', (n: number) => 1 + y(n)],
    ['at the top', (n: number) => 6 - y(n)],
    ['on the right', (n: number) => 1 + x(n)],
    ['lower left', (n: number) => 6 + y(n) - x(n)],
  ])('stronger %s', (side, own) => expect(said(own)).toBe(`Brown: stronger ${side}.`));

  it('says nothing of an even wash, or of one that goes to and fro', () => {
    expect(said(() => 3)).toBe('');
    expect(said((n) => 3 + (n % 2))).toBe('');
    expect(said((n) => 3 + 0.1 * x(n))).toBe(''); // a hand does no finer
  });

  it('says from where the second puddle comes in', () => {
    const shared = said(
      (n) => 3 - 0.5 * x(n),
      (n) => 0.5 * x(n),
    );
    expect(shared).toBe('Brown: let puddle B run in on the right, while it shines.');
  });

  it('a paint by itself is told by its name', () => {
    const alone = { parts: umber, puddle: null };
    const told = said(
      (n) => 3 - 0.5 * x(n),
      (n) => 0.5 * x(n),
      alone,
    );
    expect(told).toBe('Brown: let burnt umber run in on the right, while it shines.');
  });

  it('says here and there where it comes from no side, and nothing of a trace', () => {
    const dotted = said(
      (n) => 3 - (n % 2),
      (n) => n % 2,
    );
    expect(dotted).toBe('Brown: let puddle B run in here and there, while it shines.');
    expect(
      said(
        () => 3,
        () => 0.1,
      ),
    ).toBe('');
  });
});
