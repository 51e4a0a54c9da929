import { signal } from '@preact/signals';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { AnalysisClient } from '../../../../app/client/analysis-client.ts';
import { roomWeather } from '../../../../app/core/drying/weather.ts';
import type { Step } from '../../../../app/core/plan/plan.ts';
import { createOwnAir } from '../../../../app/state/own-air.ts';
import { createEasel, type Easel } from '../../../../app/state/session/easel.ts';
import { onlyWindow, type SessionLock } from '../../../../app/state/session/session-lock.ts';
import type { Store } from '../../../../app/storage/open-store.ts';
import { plainStep } from '../../../support/session/plain-step.ts';
import { faultOf, madePictures, madeStore } from '../../../support/state/made-store.ts';
import {
  newPlanSample,
  paintingSample,
  photoSample,
  planSample,
} from '../../../support/storage/kept-samples.ts';

const minute = 60_000;
const step = (key: string, kind: Step['kind'], bands: number[], wet: boolean): Step => ({
  ...plainStep(1),
  key,
  kind,
  title: key,
  bands,
  technique: wet ? 'wet on dry' : 'none',
  paintMinutes: [5, 10],
  shineMinutes: wet ? [1, 5] : [0, 0],
  dryMinutes: wet ? [20, 60] : [0, 0],
});
const steps = [
  step('wash/sheet/1', 'wash', [1, 2], true),
  step('dry/sheet/1', 'dry', [3], false),
  step('wash/sheet/2', 'wash', [2, 4], true),
  step('last-look', 'last-look', [5], false),
];

async function paintedStore(): Promise<Store> {
  const store = await madeStore(() => 5);
  await store.addPainting(paintingSample('meadow', 'photo'), photoSample('photo'));
  const plan = { ...planSample('plan'), steps };
  await store.keepPlan('meadow', { ...newPlanSample('plan'), plan });
  return store;
}

const opened: Easel[] = [];
// An open easel looks at its clock four times a second.
afterEach(() => {
  for (const easel of opened.splice(0)) easel.leave();
});

async function easelOver(store: Store, changed: { lock?: SessionLock; startMs?: number } = {}) {
  let gone = 0;
  let wallMs = changed.startMs ?? Date.UTC(2031, 4, 5, 9);
  let news = (): void => {};
  const handed = [madePictures(), madePictures(), madePictures()];
  const client = { pictures: vi.fn(async () => handed[client.pictures.mock.calls.length - 1]) };
  const screenWatch = { staysOn: signal(true), hold: vi.fn(), release: vi.fn() };
  const ownAir = createOwnAir(store);
  const easel = createEasel({
    store,
    client: client as unknown as AnalysisClient,
    clock: { now: () => ({ wallMs, monoMs: gone, bootId: 'boot' }) },
    ownAir,
    createLock: (onNews) => {
      news = onNews;
      return changed.lock ?? onlyWindow;
    },
    screenWatch,
  });
  opened.push(easel);
  const wait = (ms: number): void => {
    gone += ms;
    wallMs += ms;
  };
  return {
    easel,
    client,
    handed,
    screenWatch,
    ownAir,
    wait,
    news: () => news(),
    moveWallClock(ms: number) {
      wallMs += ms;
    },
    /** Presses the large button so often, a minute apart. */
    press(times: number) {
      for (let i = 0; i < times; i++) {
        wait(minute);
        easel.goOn();
      }
    },
    kinds: () => easel.log.value.map(({ what }) => what.kind),
  };
}

describe('a session', () => {
  test('begins over the latest plan, and its first line is kept', async () => {
    const store = await paintedStore();
    const { easel, screenWatch, kinds } = await easelOver(store);
    expect([easel.desk.value, easel.running.value, easel.step.value, easel.record.value]).toEqual([
      null,
      false,
      null,
      null,
    ]);
    await easel.open('meadow');
    expect(kinds()).toEqual(['started']);
    expect(easel.log.value[0]).toMatchObject({ seq: 0, planId: 'plan', bootId: 'boot' });
    expect([easel.running.value, easel.step.value?.key]).toEqual([true, 'wash/sheet/1']);
    expect(screenWatch.hold).toHaveBeenCalledTimes(1);
    await store.settled();
    const sessionId = (await store.painting('meadow'))?.sessionIds[0] ?? '';
    expect(await store.events(sessionId)).toEqual(easel.log.value);
  });

  test('is gone through with the large button, its word changing with what stands', async () => {
    const it = await easelOver(await paintedStore());
    await it.easel.open('meadow');
    it.press(1);
    expect(it.easel.session.value.phase).toBe('painting');
    it.press(1);
    expect(it.easel.step.value?.kind).toBe('dry');
    expect([...it.easel.bandsDone.value]).toEqual([1, 2]);
    it.press(1); // dry, and on: two lines of one tap
    it.press(2);
    expect([...it.easel.bandsDone.value]).toEqual([1, 2, 4]); // bands of washes alone
    expect(it.easel.running.value).toBe(true);
    it.press(2);
    expect(it.kinds()).toEqual([
      'started',
      'step-begun',
      'step-done',
      'dry-now',
      'step-done',
      'step-begun',
      'step-done',
      'step-begun',
      'step-done',
    ]);
    expect(it.easel.log.value.map(({ seq }) => seq)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    expect([it.easel.running.value, it.easel.session.value.phase]).toEqual([false, 'finished']);
    expect(it.screenWatch.release).toHaveBeenCalled();
    expect(it.easel.record.value).not.toBeNull();
  });

  test('a wet finger’s second tap within 0.4 s is none', async () => {
    const it = await easelOver(await paintedStore());
    await it.easel.open('meadow');
    it.press(1);
    it.wait(399);
    it.easel.goOn();
    expect(it.kinds()).toEqual(['started', 'step-begun']);
    it.wait(1);
    it.easel.goOn();
    expect(it.kinds()).toEqual(['started', 'step-begun', 'step-done']);
  });

  test('paused and gone on with, by either button', async () => {
    const it = await easelOver(await paintedStore());
    await it.easel.open('meadow');
    it.press(1);
    it.wait(minute);
    it.easel.pause();
    it.wait(minute);
    it.easel.pause();
    it.wait(minute);
    it.easel.pause();
    it.press(1);
    expect(it.kinds().slice(2)).toEqual(['paused', 'resumed', 'paused', 'resumed']);
  });

  test('what she saw and where she goes back to are about the step that stands', async () => {
    const it = await easelOver(await paintedStore());
    it.easel.stillWet(); // nothing stands yet
    it.easel.shineGone();
    it.easel.back();
    it.easel.goOn();
    expect(it.kinds()).toEqual([]);
    await it.easel.open('meadow');
    it.press(2);
    it.wait(3 * minute);
    it.easel.shineGone();
    it.wait(minute);
    it.easel.stillWet();
    it.wait(minute);
    it.easel.back();
    expect(it.easel.log.value.slice(3).map(({ what }) => what)).toEqual([
      { kind: 'shine-gone', key: 'dry/sheet/1' },
      { kind: 'still-wet', key: 'dry/sheet/1' },
      { kind: 'back', key: 'dry/sheet/1' },
    ]);
    expect(it.easel.step.value?.key).toBe('wash/sheet/1');
    expect(it.easel.history.value.rows).toMatchObject([
      { title: 'wash/sheet/1', clock: 'shine', real: 3 },
    ]);
  });

  test('the last tap is taken back', async () => {
    const it = await easelOver(await paintedStore());
    await it.easel.open('meadow');
    expect(it.easel.lastAct.value).toBeNull();
    it.easel.takeBack();
    expect(it.kinds()).toEqual(['started']);
    it.press(3);
    expect(it.easel.lastAct.value?.events).toHaveLength(2);
    it.easel.takeBack();
    expect(it.kinds().at(-1)).toBe('taken-back');
    expect(it.easel.step.value?.key).toBe('dry/sheet/1');
  });

  test('finished by mistake, taken back, the screen is held on again', async () => {
    const it = await easelOver(await paintedStore());
    await it.easel.open('meadow');
    it.press(7);
    expect(it.easel.running.value).toBe(false);
    it.screenWatch.hold.mockClear();
    it.easel.takeBack();
    expect(it.easel.running.value).toBe(true);
    expect(it.screenWatch.hold).toHaveBeenCalledTimes(1);
  });
});

describe('time', () => {
  test('a wall clock set back between two taps is noted between them', async () => {
    const it = await easelOver(await paintedStore());
    await it.easel.open('meadow');
    it.press(1);
    it.wait(minute);
    it.moveWallClock(-60 * minute);
    it.easel.stillWet();
    expect(it.easel.log.value.slice(2).map(({ seq, what }) => [seq, what.kind])).toEqual([
      [2, 'clock-moved'],
      [3, 'still-wet'],
    ]);
    expect(it.easel.log.value[2]?.what).toEqual({ kind: 'clock-moved', byMs: -60 * minute });
  });

  test('and noted when it is seen, without a tap', async () => {
    const it = await easelOver(await paintedStore());
    await it.easel.open('meadow');
    it.moveWallClock(-60 * minute);
    await expect.poll(() => it.kinds()).toEqual(['started', 'clock-moved']);
    it.wait(2 * minute);
    await expect.poll(() => it.easel.time.value.atMs).toBe(2 * minute);
    expect(it.kinds()).toHaveLength(2);
  });
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

  test('that can not be kept count all the same, and it is said', async () => {
    const it = await easelOver(await paintedStore());
    await it.easel.open('meadow');
    vi.spyOn(it.ownAir, 'set').mockRejectedValueOnce(faultOf('StorageError', 'No room.'));
    it.easel.setAir({ weather: damp, paper });
    await expect.poll(() => it.easel.problem.value).toBe('No room.');
    expect(it.easel.session.value.weather).toEqual(damp);
  });
});

describe('several windows', () => {
  const lockOf = (inCharge: boolean) => ({
    inCharge: signal(inCharge),
    ask: vi.fn(),
    takeOver: vi.fn(),
    release: vi.fn(),
    kept: vi.fn(),
  });

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
