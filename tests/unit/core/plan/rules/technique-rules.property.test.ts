import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Technique } from '../../../../../app/core/decisions/plan-edit.ts';
import type { Step } from '../../../../../app/core/plan/plan.ts';
import { techniquesInOrder } from '../../../../../app/core/plan/rules/technique-rules.ts';
import { sides } from '../../../../../app/core/raster/size.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import {
  border,
  liftingPaint,
  type MadeSlot,
  madeFacts,
  sheet,
  stepOf,
} from '../../../../support/plan/made-work.ts';

/** Evenly over 0..1: doubles of the library crowd at 0. */
const share = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);

const slot: fc.Arbitrary<MadeSlot> = fc.record({
  lightness: fc.integer({ min: 15, max: 95 }),
  band: fc.integer({ min: 1, max: 4 }),
  family: fc.integer({ min: 1, max: 4 }),
  share: share.map((n) => n / 2),
  shapes: fc.integer({ min: 1, max: 200 }),
  smallShapes: fc.constantFrom(0, 1, 2, 30, 60, 120),
  largestMm2: share.map((n) => 1 + n * 0.5 * sheet.widthMm * sheet.heightMm),
  centre: fc.tuple(share, share),
  slope: fc.record({
    lightness: share.map((n) => 1 + 39 * n),
    fit: share,
    towards: fc.constantFrom(...sides),
  }),
});

const paint = fc.constantFrom(liftingPaint, 'pb27-prussian-blue', 'pbr7-burnt-sienna');
const techniques: readonly Technique[] = ['wet on dry', 'wet-in-wet', 'glaze', 'dry brush'];

const work = fc.record({
  slots: fc.array(slot, { minLength: 2, maxLength: 8 }),
  borders: fc.array(
    fc
      .tuple(
        fc.nat(7),
        fc.nat(7),
        share.map((n) => 900 * n),
        share,
        share,
      )
      .map(([a, b, lengthMm, soft, lost]) =>
        border(Math.min(a, b), Math.max(a, b), { lengthMm, soft, lost: Math.min(lost, 1 - soft) }),
      ),
    { maxLength: 12 },
  ),
  later: fc.array(fc.array(fc.nat(7), { minLength: 1, maxLength: 8 }), { maxLength: 4 }),
  paints: fc.tuple(paint, paint, paint, paint),
  loads: fc.tuple(...Array.from({ length: 4 }, () => fc.constantFrom(0.5, 2.6, 6.4, 11.4))),
  techniques: fc.array(fc.constantFrom(...techniques), { minLength: 5, maxLength: 5 }),
});

// Limits and figures are (own): the docstrings of what is tested say why.

// R5, R11, R13, R20, R21 in app/core/plan/rules/rules.md.
test('whatever the reading: the right paper, in time, no drops in a plain area, no lifting of stains', () => {
  let seen = 0;
  fc.assert(
    fc.property(work, (made) => {
      const count = made.slots.length;
      const all = made.slots.map((_, i) => i);
      const facts = madeFacts({
        slots: made.slots,
        borders: made.borders.filter(({ a, b }) => a !== b && b < count),
        washes: {
          sheet: [all, ...made.later.map((own) => [...new Set(own.map((i) => i % count))])],
        },
        paints: Object.fromEntries(made.paints.map((id, i) => [i + 1, id])),
        loads: Object.fromEntries(made.loads.map((load, i) => [i + 1, load])),
      });
      const steps = [...Array(made.later.length + 1).keys()].map(
        (i): Step => ({
          ...stepOf(facts, i + 1, made.techniques[i]),
          n: i + 1,
          after: [],
        }),
      );
      const mixes = facts.passages.flatMap(({ washes }) => washes.flatMap((wash) => wash.mixes));
      const plan = {
        paper: [96, 0, 0] as const,
        slots: facts.slots,
        optics: facts.paints,
        mixes,
        steps,
      };
      expect(techniquesInOrder(plan, { washes: 8, puddlesPerWash: 8 })).toEqual([]);
      for (const { touches = [], slots, paper } of steps) {
        seen += touches.length;
        for (const { technique, text, minutes } of touches) {
          expect(words(text).length, words(text)).toBeLessThanOrEqual(170);
          expect(JSON.stringify([words(text), minutes])).not.toMatch(/undefined|NaN|null,/);
          if (technique === 'water drops') {
            expect(slots.some((i) => (facts.slots[i]?.smallShapes ?? 0) >= 40)).toBe(true);
          }
          if (technique === 'negative painting') expect(paper).toBe('bone dry');
        }
      }
    }),
    { numRuns: 400, seed: 5 },
  );
  // The property is about something.
  expect(seen).toBeGreaterThan(400);
});
