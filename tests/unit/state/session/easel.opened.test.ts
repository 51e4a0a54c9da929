import { signal } from '@preact/signals';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { roomWeather } from '../../../../app/core/drying/weather.ts';
import { easelOver, leaveEasels, minute, paintedStore } from '../../../support/state/made-easel.ts';
import { faultOf } from '../../../support/state/made-store.ts';
import { failPuts } from '../../../support/storage/failing-put.ts';
import {
  newPlanSample,
  paintingSample,
  photoSample,
} from '../../../support/storage/kept-samples.ts';

afterEach(leaveEasels);

const lockOf = (inCharge: boolean) => ({
  inCharge: signal(inCharge),
  ask: vi.fn(),
  takeOver: vi.fn(),
  release: vi.fn(),
  kept: vi.fn(),
});

describe('opened again', () => {
  test('the session under way goes on where it was', async () => {
    const store = await paintedStore();
    const before = await easelOver(store);
    await before.easel.open('meadow');
    before.press(2);
    await store.settled();
    const it = await easelOver(store);
    await it.easel.open('meadow');
    expect(it.easel.log.value).toEqual(before.easel.log.value);
    expect(it.easel.step.value?.key).toBe('dry/sheet/1');
    await it.easel.open('meadow'); // the same window: nothing is fetched again
    expect(it.client.pictures).toHaveBeenCalledTimes(1);
  });

  test('a finished one makes way for a new one, which has learned from it', async () => {
    const store = await paintedStore();
    const it = await easelOver(store);
    await it.easel.open('meadow');
    it.press(1);
    it.wait(minute);
    it.easel.tell({ kind: 'mix-changed', mix: 'no such mix', parts: [], load: 2 });
    it.press(1);
    it.wait(4 * minute);
    it.easel.shineGone();
    it.press(5);
    expect(it.easel.running.value).toBe(false);
    await store.settled();
    it.wait(60 * minute);
    await it.easel.open('meadow');
    expect(it.kinds()).toEqual(['started']); // a mix the plan does not have is not brought along
    expect(it.easel.earlier.value).toHaveLength(1);
    expect(it.easel.session.value.lessons.length).toBeGreaterThan(0);
    expect(it.handed.map(({ reference, grey }) => [reference.closed, grey.closed])).toEqual([
      [1, 1],
      [0, 0],
      [0, 0],
    ]);
  });

  test('for the record only: the last session, nothing added; a painting without one has none', async () => {
    const store = await paintedStore();
    const before = await easelOver(store);
    await before.easel.lookBack('meadow');
    expect([before.easel.desk.value, before.easel.problem.value]).toEqual([null, null]);
    await before.easel.open('meadow');
    before.press(7);
    await store.settled();
    const it = await easelOver(store);
    await it.easel.lookBack('meadow');
    expect(it.easel.log.value).toEqual(before.easel.log.value);
    expect(it.easel.record.value).not.toBeNull();
    expect(it.screenWatch.hold).not.toHaveBeenCalled();
    await it.easel.lookBack('meadow');
    expect(it.client.pictures).toHaveBeenCalledTimes(1);
  });

  test('what can not be opened is said, and tried again', async () => {
    const it = await easelOver(await paintedStore());
    it.client.pictures.mockImplementationOnce(() =>
      Promise.reject(faultOf('AnalysisError', 'It stopped.')),
    );
    await it.easel.open('meadow');
    expect([it.easel.desk.value, it.easel.problem.value]).toEqual([null, 'It stopped.']);
    it.easel.again();
    await expect.poll(() => it.kinds()).toEqual(['started']);
    expect(it.easel.problem.value).toBeNull();
  });
});

describe('left while it opens', () => {
  test('nothing of it runs on: no lock, no screen held, its pictures given back', async () => {
    const lock = lockOf(true);
    const it = await easelOver(await paintedStore(), { lock });
    const opening = it.easel.open('meadow');
    it.easel.leave();
    await opening;
    expect(lock.ask).not.toHaveBeenCalled();
    expect(it.screenWatch.hold).not.toHaveBeenCalled();
    expect([it.kinds(), it.easel.desk.value, it.easel.running.value]).toEqual([[], null, false]);
    const { reference, grey } = it.handed[0] ?? {};
    expect([reference?.closed, grey?.closed]).toEqual([1, 1]);
    await it.easel.open('meadow'); // and it opens all the same
    expect(it.kinds()).toEqual(['started']);
    expect(lock.ask).toHaveBeenCalledTimes(1);
  });

  test('for another painting: what comes late is not laid over that', async () => {
    const store = await paintedStore();
    await store.addPainting(paintingSample('pond', 'p2'), photoSample('p2'));
    await store.keepPlan('pond', newPlanSample('pond plan'));
    const it = await easelOver(store);
    const first = it.easel.open('meadow');
    const second = it.easel.open('pond');
    await Promise.all([first, second]);
    expect(it.easel.desk.value?.plan.id).toBe('pond plan');
    it.easel.leave();
    await it.easel.open('meadow');
    it.easel.leave();
    const back = it.easel.open('pond');
    expect(it.easel.desk.value).toBeNull(); // not the meadow's, under the pond's name
    await back;
    expect(it.easel.desk.value?.plan.id).toBe('pond plan');
  });
});

describe('air and paper', () => {
  const damp = { ...roomWeather, humidity: 85 };
  const paper = { gsm: 190, fibre: 'cellulose' } as const;

  test('set at the easel they count from now on, and for the next session', async () => {
    const store = await paintedStore();
    const it = await easelOver(store);
    await it.easel.open('meadow');
    it.easel.setAir({ weather: damp, paper });
    expect(it.easel.session.value).toMatchObject({ weather: damp, paper });
    await expect.poll(() => it.ownAir.air.value).toMatchObject({ weather: damp, paper });
    it.press(7);
    await store.settled();
    const next = await easelOver(store, { startMs: Date.UTC(2031, 4, 6) });
    await next.easel.open('meadow');
    expect(next.kinds()).toEqual(['started', 'weather', 'paper']);
    expect(next.easel.session.value).toMatchObject({ weather: damp, paper });
  });

  test('that can not be kept count all the same; it is said until they are, and no longer', async () => {
    const store = await paintedStore({ retryMs: 1 });
    const it = await easelOver(store);
    await it.easel.open('meadow');
    await store.settled();
    const end = failPuts('settings', 'QuotaExceededError', Number.POSITIVE_INFINITY);
    it.easel.setAir({ weather: damp, paper });
    await expect.poll(() => it.easel.savedWord.value).toBe('not saved');
    expect(it.easel.problem.value).toMatch(/too little room/);
    expect(it.easel.session.value.weather).toEqual(damp);
    end();
    await expect.poll(() => it.easel.savedWord.value).toBe('saved');
    expect(it.easel.problem.value).toBeNull();
    expect(await store.setting('air and paper')).toMatchObject({ weather: damp, paper });
  });
});

describe('several windows', () => {
  test('a window not in charge adds nothing, and follows what the other one kept', async () => {
    const store = await paintedStore();
    const first = await easelOver(store);
    await first.easel.open('meadow');
    await store.settled();
    const lock = lockOf(false);
    const it = await easelOver(store, { lock });
    it.news(); // nothing open yet
    await it.easel.open('meadow');
    expect(lock.ask).toHaveBeenCalledWith(it.easel.desk.value?.sessionId);
    it.press(2);
    expect(it.kinds()).toEqual(['started']);
    first.press(2);
    await store.settled();
    it.news();
    await expect.poll(() => it.kinds()).toEqual(['started', 'step-begun', 'step-done']);
    expect(lock.kept).not.toHaveBeenCalled();
    const same = it.easel.log.value;
    it.news(); // no more than is known
    await store.settled();
    expect(it.easel.log.value).toBe(same);
  });

  test('the window in charge tells what it kept; a line the other one took is said', async () => {
    const store = await paintedStore();
    const lock = lockOf(true);
    const it = await easelOver(store, { lock });
    await it.easel.open('meadow');
    await expect.poll(() => lock.kept.mock.calls.length).toBe(1);
    const sessionId = it.easel.desk.value?.sessionId ?? '';
    const [first] = it.easel.log.value;
    if (!first) throw new Error('no line');
    await store.appendEvents([{ ...first, id: 'of the other window', seq: 1, sessionId }]);
    it.press(1);
    await expect.poll(() => it.easel.problem.value).toMatch(/going on in another window/);
    expect(it.kinds()).toEqual(['started', 'step-begun']); // still in view
    expect(lock.kept).toHaveBeenCalledTimes(1);
    expect(it.easel.savedWord.value).toBe('not saved');
  });
});
