import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import type { EventBody, SessionEvent } from '../../../../app/core/session/session-event.ts';
import type { Desk } from '../../../../app/state/session/desk.ts';
import { createRevisedDesk } from '../../../../app/state/session/revised-desk.ts';
import { plainStep } from '../../../support/session/plain-step.ts';
import { eventSample, planSample } from '../../../support/storage/kept-samples.ts';

const after = [[60, 0, 0]] as const;
const plan = {
  ...planSample('plan'),
  slots: [
    {
      ...{ passage: 'sheet', band: 1, family: 1, share: 1, lab: [60, 0, 0], target: [60, 0, 0] },
      reserve: false,
    },
  ],
  steps: [1, 2].map((n) => ({ ...plainStep(n), after })),
} as unknown as Desk['plan'];
const desk = {
  plan,
  seen: { reading: { bands: [{}], families: [{ id: 1, name: 'dull green', lab: [60, 0, 0] }] } },
} as unknown as Desk;

const mended: EventBody = {
  ...{ kind: 'mended', photoId: 'p', after: 'step-1', before: 'step-2', mending: 'lift' },
  ...{ slot: 0, at: [0.5, 0.5], measured: [50, 0, 0], expected: [60, 0, 0] },
  ...{ predicted: [58, 0, 0], parts: [], load: 0, consistency: null, rows: [] },
};

test('advice in the log revises the plan, other lines do not, and taken back it is as it was', async () => {
  const log = signal<readonly SessionEvent[]>([]);
  const { laid, desk: shown } = createRevisedDesk(log);
  expect(shown.value).toBeNull();
  laid.value = desk;
  expect(shown.value).toBe(desk);
  log.value = [eventSample('s', 0, mended)];
  const keys = (): string[] | undefined => shown.value?.plan.steps.map(({ key }) => key);
  await expect.poll(keys).toEqual(['step-1', 'mend/sheet/1', 'step-2']);
  expect(shown.value?.plan.basedOn).toBe('plan');
  const revised = shown.value;
  log.value = [...log.value, eventSample('s', 1, { kind: 'note', text: 'dry' })];
  expect(shown.value).toBe(revised);
  log.value = [...log.value, eventSample('s', 2, { kind: 'taken-back', events: ['s 0'] })];
  expect(shown.value).toBe(desk);
});
