import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clockSetBackMs, elapsedMs } from '../../../../app/model/session/elapsed-ms.ts';

const at = (wallMs: number, monoMs: number, bootId = 'a') => ({ wallMs, monoMs, bootId });

// Cases of the project's own collection of clock faults; W3C High Resolution Time for sleep.
describe('time gone by', () => {
  test.each([
    ['both clocks agree', at(0, 0), at(5000, 5000), 5000],
    ['wall clock set back an hour', at(0, 0), at(300_000 - 3_600_000, 300_000), 300_000],
    ['asleep for ten minutes', at(0, 0), at(900_000, 300_000), 900_000],
    ['page loaded anew', at(0, 90_000), at(60_000, 20, 'b'), 60_000],
    ['page loaded anew, wall clock set back', at(60_000, 90_000), at(0, 20, 'b'), 0],
    ['a clock that gives nonsense', at(0, 0), at(Number.NaN, 70), 70],
  ])('%s', (_, from, to, ms) => {
    expect(elapsedMs(from, to)).toBe(ms);
  });

  test('is never negative and never nonsense', () => {
    const moment = fc.record({
      wallMs: fc.double(),
      monoMs: fc.double(),
      bootId: fc.constantFrom('a', 'b'),
    });
    fc.assert(
      fc.property(moment, moment, (from, to) => {
        const ms = elapsedMs(from, to);
        expect(ms >= 0).toBe(true);
        expect(Number.isNaN(ms)).toBe(false);
      }),
      { seed: 3 },
    );
  });
});

test.each([
  [at(0, 0), at(5000, 5000), 0],
  [at(0, 0), at(4000, 5000), 0],
  [at(0, 0), at(-3_595_000, 5000), -3_600_000],
  [at(0, 0), at(605_000, 5000), 0],
  [at(0, 0), at(-3_595_000, 5000, 'b'), 0],
])('a wall clock set back is noticed within one life of the page', (from, to, by) => {
  expect(clockSetBackMs(from, to)).toBe(by);
});
