import { signal } from '@preact/signals';
import type { AnalysisClient } from '../../../app/client/analysis-client.ts';
import { createOwnAir } from '../../../app/state/own-air.ts';
import type { Clock } from '../../../app/state/session/device.ts';
import { createEasel, type Easel } from '../../../app/state/session/easel.ts';
import { onlyWindow } from '../../../app/state/session/session-lock.ts';
import { openStore, type Store } from '../../../app/storage/open-store.ts';
import { newPlanSample, paintingSample, photoSample } from '../../support/storage/kept-samples.ts';
import { madePlan } from './made-plan.ts';

const minuteMs = 60_000;

export interface MadeEasel {
  readonly easel: Easel;
  readonly store: Store;
  readonly clock: Clock;
  /** Lets time go by on both clocks of the device, then lets the easel look at them. */
  wait(minutes: number): void;
  /** Presses on until a step of that kind stands. */
  goTo(kind: string): void;
  /** The session of this painting over; a new one is opened. */
  paintAgain(): Promise<void>;
}

let made = 0;
const plan = await madePlan();

/** The easel over a real plan and a real store; only time and pictures are made up. */
export async function madeEasel(): Promise<MadeEasel> {
  const store = await openStore({ name: `made easel ${made++} ${Math.random()}` });
  await store.addPainting(paintingSample('made', 'photo'), photoSample('photo'));
  await store.keepPlan('made', { ...newPlanSample(plan.id), plan });
  let gone = 0;
  const from = Date.UTC(2031, 4, 5, 9);
  const picture = () => createImageBitmap(new ImageData(4, 3));
  const client = {
    pictures: async () => ({ reference: await picture(), grey: await picture() }),
  } as unknown as AnalysisClient;
  const clock: Clock = { now: () => ({ wallMs: from + gone, monoMs: gone, bootId: 'made' }) };
  const easel = createEasel({
    store,
    client,
    clock,
    ownAir: createOwnAir(store),
    createLock: () => onlyWindow,
    screenWatch: { staysOn: signal(true), hold: () => {}, release: () => {} },
  });
  await easel.open('made');
  const pass = (ms: number): void => {
    gone += ms;
  };
  const pressOn = (): void => {
    pass(1000);
    easel.goOn();
  };
  return {
    easel,
    store,
    clock,
    wait: (minutes) => pass(minutes * minuteMs),
    goTo(kind) {
      while (easel.step.value?.kind !== kind) pressOn();
    },
    async paintAgain() {
      while (easel.running.value) pressOn();
      await store.settled();
      pass(24 * 60 * minuteMs);
      await easel.open('made');
    },
  };
}
