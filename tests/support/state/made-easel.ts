import { signal } from '@preact/signals';
import { vi } from 'vitest';
import type { AnalysisClient } from '../../../app/client/analysis-client.ts';
import type { Step } from '../../../app/core/plan/plan.ts';
import { createOwnAir } from '../../../app/state/own-air.ts';
import { createEasel, type Easel } from '../../../app/state/session/easel.ts';
import { onlyWindow, type SessionLock } from '../../../app/state/session/session-lock.ts';
import type { Store } from '../../../app/storage/open-store.ts';
import { plainStep } from '../session/plain-step.ts';
import { newPlanSample, paintingSample, photoSample, planSample } from '../storage/kept-samples.ts';
import { madePictures, madeStore } from './made-store.ts';

export const minute = 60_000;
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

/** A painting with a plan of two washes. */
export async function paintedStore(options: { retryMs?: number } = {}): Promise<Store> {
  const store = await madeStore({ readTimeMs: () => 5, ...options });
  await store.addPainting(paintingSample('meadow', 'photo'), photoSample('photo'));
  const plan = { ...planSample('plan'), steps };
  await store.keepPlan('meadow', { ...newPlanSample('plan'), plan });
  return store;
}

/** With a session of that id begun. */
export async function storeWithSession(sessionId = 's'): Promise<Store> {
  const store = await paintedStore();
  await store.sessionOf('meadow', sessionId);
  return store;
}

const opened: Easel[] = [];

/** To be left after every test: an open easel looks at its clock four times a second. */
export function leaveEasels(): void {
  for (const easel of opened.splice(0)) easel.leave();
}

/** An easel over a store; time and pictures are made up. */
export async function easelOver(
  store: Store,
  changed: { lock?: SessionLock; startMs?: number } = {},
) {
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
