import { afterEach, describe, expect, test } from 'vitest';
import { easelOver, leaveEasels, minute, paintedStore } from '../../../support/state/made-easel.ts';

afterEach(leaveEasels);

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
    it.press(1); // the last look has no beginning
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
    it.press(6);
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
