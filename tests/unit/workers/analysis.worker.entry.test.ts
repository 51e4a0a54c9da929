import * as Comlink from 'comlink';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { paintBox } from '../../../app/core/paint/paint-box.ts';
import { buildPlan } from '../../../app/core/plan/build-plan.ts';
import type { AnalysisApi } from '../../../workers/api.ts';
import { madeReading, tableOf } from '../../support/plan/made-reading.ts';

// The worker's entry over a channel instead of a thread: what needs no picture of a browser's (own).
const { port1, port2 } = new MessageChannel();
const worker = Comlink.wrap<AnalysisApi>(port2 as unknown as Comlink.Endpoint);

beforeAll(async () => {
  vi.stubGlobal('addEventListener', port1.addEventListener.bind(port1));
  vi.stubGlobal('postMessage', port1.postMessage.bind(port1));
  port1.start();
  await import('../../../workers/analysis.worker.ts');
});
afterAll(() => {
  vi.unstubAllGlobals();
  port1.close();
  port2.close();
});

const reading = madeReading(tableOf([90, 60, 30], [[10, 20]]));
const chosen = ['py43-yellow-ochre', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];

test('a plan is the core’s, told on the way and to its end', async () => {
  const parts: number[] = [];
  const told = Comlink.proxy((part: number) => void parts.push(part));
  const plan = await worker.plan(1, reading, { chosen }, told);
  const own = await buildPlan(reading, { chosen }, async () => {});
  expect(plan.steps).toEqual(own.steps);
  expect(parts.length).toBeGreaterThan(0);
  expect(parts).toEqual(parts.toSorted((one, two) => one - two));
});

test('wishes that contradict each other come as a WishError with a sentence, before any work', async () => {
  const parts: number[] = [];
  const told = Comlink.proxy((part: number) => void parts.push(part));
  const wishes = { chosen: ['no-such-paint'] };
  for (const asked of [
    worker.plan(2, reading, wishes, told),
    worker.palettes(3, reading, wishes, told),
  ])
    await expect(asked).rejects.toMatchObject({
      name: 'WishError',
      message: expect.stringMatching(/\.$/),
    });
  expect(parts).toEqual([]);
});

test('optics of a paint of the table, and of none that is not in it', async () => {
  const [first] = paintBox;
  const found = await worker.opticsLike(4, first?.id ?? '');
  expect([found?.K, found?.S]).toEqual([first?.K, first?.S]);
  expect(await worker.opticsLike(5, 'no-such-paint')).toBeNull();
});
