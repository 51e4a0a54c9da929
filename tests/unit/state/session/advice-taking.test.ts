import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import type { Advice } from '../../../../app/core/compare/comparison.ts';
import type { EventBody, SessionEvent } from '../../../../app/core/session/session-event.ts';
import { freshState } from '../../../../app/core/session/session-state.ts';
import { createAdviceTaking, nextStepKey } from '../../../../app/state/session/advice-taking.ts';
import type { Desk } from '../../../../app/state/session/desk.ts';
import { plainStep } from '../../../support/session/plain-step.ts';
import { eventSample, planSample } from '../../../support/storage/kept-samples.ts';

const advice: Advice = {
  ...{ mending: 'lift', weight: 1, slot: 0, shapes: [2], at: [0.5, 0.5], share: 0.1 },
  ...{ difference: -9, drift: [], measured: [50, 0, 0], expected: [59, 0, 0] },
  predicted: [58, 0, 0],
};
const steps = [1, 2, 3].map(plainStep);

test('advice is taken once, and can be left out again', () => {
  const log = signal<readonly SessionEvent[]>([]);
  const tell = (...bodies: readonly EventBody[]): void => {
    log.value = [...log.value, ...bodies.map((what) => eventSample('s', log.value.length, what))];
  };
  const desk = {
    plan: { ...planSample('plan'), steps },
    seen: { reading: { raster: { width: 2, height: 1 } } },
  } as unknown as Desk;
  const session = signal({ ...freshState, stepIndex: 1, phase: 'ready' as const });
  const pictures = {
    ...{ size: { width: 2, height: 1 }, slotMap: Uint8Array.of(0, 1), shapes: Int32Array.of(2, 3) },
  };
  const easel = { desk: signal(desk), session, log, tell };
  const taking = createAdviceTaking({ easel, photoId: 'p', after: 'step-1', pictures });
  expect(taking.taken(advice)).toBe(false);
  taking.take(advice);
  taking.take(advice);
  expect(log.value.map(({ what }) => what)).toMatchObject([
    { kind: 'mended', photoId: 'p', after: 'step-1', before: 'step-2', mending: 'lift' },
  ]);
  expect(taking.taken(advice)).toBe(true);
  taking.leaveOut(advice);
  expect(taking.taken(advice)).toBe(false);
  expect(log.value.at(-1)?.what).toEqual({ kind: 'taken-back', events: ['s 0'] });
});

test('what comes next is the step that stands, or the one after it once that is begun', () => {
  expect(nextStepKey({ stepIndex: 1, phase: 'ready' }, steps)).toBe('step-2');
  expect(nextStepKey({ stepIndex: 1, phase: 'drying' }, steps)).toBe('step-3');
  expect(nextStepKey({ stepIndex: 2, phase: 'painting' }, steps)).toBeNull();
});
