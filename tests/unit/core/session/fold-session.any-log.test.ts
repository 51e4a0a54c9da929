import fc from 'fast-check';
import { expect, test } from 'vitest';
import { easelTime } from '../../../../app/core/session/easel-time.ts';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import type { EventBody } from '../../../../app/core/session/session-event.ts';
import { device, steps } from '../../../support/session/session-log.ts';

const key = fc.constantFrom(...steps.map((step) => step.key), 'no such step');
const body: fc.Arbitrary<EventBody> = fc.oneof(
  fc.record({
    kind: fc.constantFrom(
      'step-begun',
      'painting-done',
      'still-wet',
      'shine-gone',
      'dry-now',
      'step-done',
      'back',
    ),
    key,
  }) as fc.Arbitrary<EventBody>,
  fc.record({
    kind: fc.constantFrom('started', 'paused', 'resumed', 'finished'),
  }) as fc.Arbitrary<EventBody>,
  fc.record({ kind: fc.constant('clock-moved' as const), byMs: fc.integer() }),
  fc.record({ kind: fc.constant('note' as const), text: fc.string() }),
);
const happening = fc.record({
  body,
  ms: fc.integer({ min: 0, max: 3_600_000 }),
  how: fc.constantFrom('wait', 'wait', 'sleep', 'set back', 'restart'),
});

test('every prefix of any log folds; times never run backwards, double or negative', () => {
  fc.assert(
    fc.property(fc.array(happening, { maxLength: 40 }), (happenings) => {
      const it = device();
      let real = 0;
      let before = 0;
      for (const { body: what, ms, how } of happenings) {
        if (how === 'set back') it.moveWallClock(-ms);
        else {
          real += ms;
          if (how === 'wait') it.wait(ms);
          else if (how === 'sleep') it.sleep(ms);
          else it.restart(ms);
        }
        it.log(what);
        const state = foldSession(steps, it.events);
        expect(state.atMs).toBeGreaterThanOrEqual(before);
        expect(state.atMs).toBeLessThanOrEqual(real);
        before = state.atMs;
        expect(steps[state.stepIndex]).toBeDefined();
        const spent = Object.values(state.spent).reduce(
          (all, s) => all + s.paintingMs + s.waitingMs,
          0,
        );
        expect(spent).toBeLessThanOrEqual(state.atMs);
        expect(new Set(state.clocks.map((clock) => clock.key)).size).toBe(state.clocks.length);
        for (const clock of state.clocks)
          expect(clock.endsLowMs).toBeLessThanOrEqual(clock.endsHighMs);
        const { drying } = easelTime(state, steps, it.now());
        if (drying)
          expect(Math.min(drying.lowMs, drying.highMs, drying.overMs)).toBeGreaterThanOrEqual(0);
      }
    }),
    { seed: 11, numRuns: 300 },
  );
});
