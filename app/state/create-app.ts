import { computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { type AnalysisClient, createAnalysisClient } from '../client/analysis-client.ts';
import { createCrashGuard, createReadingLock, type NoteStore } from '../client/crash-guard.ts';
import type { Painting } from '../core/decisions/painting.ts';
import { boxWishes } from '../core/decisions/wishes.ts';
import { browserTooOld } from '../core/words/reference/photo-problem.ts';
import type { Store } from '../storage/open-store.ts';
import { createUpdates, type Updates } from '../update/create-updates.ts';
import { giveHeadStart } from './head-start.ts';
import { createOwnAir, type OwnAirState } from './own-air.ts';
import { createIntake, type Intake, takeDropsAndPastes } from './painting/intake.ts';
import type {
  PaintCalls,
  PaletteCalls,
  PictureCalls,
  ScrapCalls,
} from './painting/screen-calls.ts';
import { createShelf, type PaintingCard, type Shelf } from './painting/shelf.ts';
import { createStudio, type Studio } from './painting/studio.ts';
import { createOwnBox, type OwnBoxState } from './paints/own-box.ts';
import { createRouter, type Router } from './router.ts';
import { type Clock, createClock, createScreenWatch, type ScreenWatch } from './session/device.ts';
import { createEasel, type Easel } from './session/easel.ts';
import type { EaselSenses } from './session/easel-senses.ts';
import type { QuickLookCalls } from './session/quick-look.ts';
import { createSessionLock, sessionAnywhere } from './session/session-lock.ts';
import { createStoragePromise } from './storage-promise.ts';
import { createToldOnce, type ToldOnce } from './told-once.ts';

/** For what is made only when its screen is opened. */
interface PaintNeeds {
  readonly store: Store;
  readonly client: AnalysisClient;
  readonly ownBox: OwnBoxState;
}

interface SensesNeeds {
  readonly store: Store;
  readonly easel: Easel;
  readonly clock: Clock;
  readonly screenWatch: ScreenWatch;
}

/** What copies are made and brought back with. */
interface CopyNeeds {
  readonly store: Store;
  /** A copy that came in from outside, to be looked through. */
  readonly arrived: Signal<File | null>;
  readonly inSessionAnywhere: () => Promise<boolean>;
  /** Box, air and paintings are read again: a copy was brought back. */
  readonly onBrought: () => Promise<void>;
}

/** Everything the screens are given. */
export interface App {
  readonly router: Router;
  readonly shelf: Shelf;
  readonly intake: Intake;
  readonly studio: Studio;
  readonly ownBox: OwnBoxState;
  readonly ownAir: OwnAirState;
  readonly toldOnce: ToldOnce;
  /** What the paints being typed and measured are kept and worked out with. */
  readonly paintNeeds: PaintNeeds;
  readonly paintCalls: PaintCalls & PaletteCalls & PictureCalls & ScrapCalls & QuickLookCalls;
  readonly easel: Easel;
  readonly copyNeeds: CopyNeeds;
  /** Sound, touch and settings at the easel; made by what its screen brings, once. */
  sensesBy(
    make: (needs: SensesNeeds, window: Window & typeof globalThis) => EaselSenses,
  ): EaselSenses;
  readonly updates: Updates;
  /** What this browser lacks for reading a photo, in words; null where nothing. */
  readonly browserProblem: string | null;
  /** Whether the browser has promised to keep what is stored; null where it does not say. */
  readonly storagePromised: ReadonlySignal<boolean | null>;
  /** A standing trouble with keeping things, in words; null while all is well. */
  readonly storageProblem: ReadonlySignal<string | null>;
  /** Makes a small study of a painting and opens its plan; rejects with a fault that has a sentence. */
  smallStudyOf(painting: Painting): Promise<void>;
  /** Goes on where a painting was left. */
  goOn(painting: PaintingCard): void;
}

/** Reading the very property throws where all storage is blocked; the guard works without notes. */
function notesOf(window: Window): NoteStore {
  try {
    return window.localStorage;
  } catch {
    return { getItem: () => null, setItem: () => {}, removeItem: () => {} };
  }
}

/** What windows of one app know each other by. */
const sessionWindows = (window: Window & typeof globalThis) => ({
  locks: window.navigator.locks as LockManager | undefined,
  channel:
    'BroadcastChannel' in window ? new window.BroadcastChannel('firstwash session') : undefined,
});

const left = {
  study: 'look',
  photo: 'look',
  plan: 'plan',
  easel: 'easel',
  finished: 'record',
  damaged: 'look',
} as const;

/** What the worker can't do without; lists that sort into a copy came last of what it is written in. */
const readsPhotos = (window: Window): boolean =>
  'OffscreenCanvas' in window && 'createImageBitmap' in window && 'toSorted' in Array.prototype;

export function createApp(store: Store, window: Window & typeof globalThis): App {
  const router = createRouter(window);
  const client = createAnalysisClient();
  const guard = createCrashGuard(notesOf(window), createReadingLock(window.navigator.locks));
  window.addEventListener('pagehide', () => guard.end());
  const shelf = createShelf(store);
  const look = ({ id }: Painting): void => router.go({ screen: 'look', paintingId: id });
  const intake = createIntake({
    store,
    photoSize: (photo) => client.photoSize(new AbortController().signal, photo),
    lastSheet: shelf.lastSheet,
    onPainting: look,
    onCandidates: () => router.go({ screen: 'choose' }),
  });
  const arrived = signal<File | null>(null);
  const onCopy = (copy: File): void => {
    arrived.value = copy;
    router.go({ screen: 'copies' });
  };
  const welcome = (): boolean => router.route.value.screen !== 'easel';
  takeDropsAndPastes({
    window,
    welcome,
    onFile: (file) => (/\.zip$/i.test(file.name) ? onCopy(file) : void intake.take(file)),
  });
  const onPhotos = (photos: File[]): void => {
    const [photo, ...more] = photos;
    if (more.length) void intake.takeSeveral(photos);
    else if (photo) void intake.take(photo);
  };
  import('./arriving-files.ts').then(
    ({ takeArrivingFiles }) => takeArrivingFiles({ window, welcome, onPhotos, onCopy }),
    () => undefined, // not on the device yet: the next time
  );
  const goOn = ({ id, stage }: PaintingCard): void =>
    router.go({ screen: left[stage], paintingId: id });
  import('./launches.ts').then(
    ({ takeLaunches }) => takeLaunches({ window, router, shelf, goOn }),
    () => undefined, // likewise
  );
  const windows =
    'BroadcastChannel' in window ? new window.BroadcastChannel('firstwash kept') : null;
  const ownBox = createOwnBox(store, client, () => windows?.postMessage('box'));
  const ownAir = createOwnAir(store);
  const readAgain = (): Promise<unknown> =>
    Promise.all([ownBox.readAgain(), ownAir.readAgain(), shelf.refresh()]);
  if (windows)
    windows.onmessage = ({ data }: MessageEvent<unknown>) =>
      void (data === 'box' ? ownBox.readAgain() : readAgain());
  const toldOnce = createToldOnce(store);
  const studio = createStudio({
    store,
    client,
    guard,
    ownBox,
    ownAir,
    onBadPhoto: async ({ id }, sentence) => {
      intake.refuse(sentence);
      router.replace({ screen: 'start' });
      await store.discard(id);
      await shelf.refresh();
    },
  });
  const clock = createClock();
  const screenWatch = createScreenWatch(window.document, window.navigator);
  const easel = createEasel({
    store,
    client,
    clock,
    screenWatch,
    ownAir,
    createLock: (onNews) => createSessionLock({ ...sessionWindows(window), onNews }),
  });
  effect(() => {
    if (store.trouble.value?.kind !== 'gone') return;
    const needs = { store, studio, easel, ownBox, ownAir };
    void import('./rescue.ts').then(
      ({ rescue }) => rescue(needs),
      () => undefined, // not on the device: what was lost is said
    );
  });
  let senses: EaselSenses | null = null;
  /** What only this window holds would be lost by a reload; an outdated window can keep nothing any more. */
  const holdsUnkept = (): boolean =>
    store.saving.value === 'failed' && store.trouble.value?.kind !== 'outdated';
  const inSessionAnywhere = (): Promise<boolean> => sessionAnywhere(window.navigator.locks);
  const updates = createUpdates({
    settled: store.settled,
    inSession: computed(() => easel.running.value || holdsUnkept()),
    inSessionAnywhere,
  });
  effect(() => {
    if (updates.offlineReady.value) window.document.documentElement.dataset.offline = 'ready';
  });
  giveHeadStart(
    computed(() => router.route.value.screen === 'easel'),
    async () => {
      await ownBox.ready;
      client
        .warmUp(new AbortController().signal, boxWishes(ownBox.box.value))
        .catch(() => undefined);
    },
  );
  return {
    router,
    shelf,
    intake,
    studio,
    ownBox,
    ownAir,
    toldOnce,
    paintNeeds: { store, client, ownBox },
    paintCalls: client,
    easel,
    copyNeeds: {
      store,
      arrived,
      inSessionAnywhere,
      async onBrought() {
        windows?.postMessage('copy');
        await readAgain();
      },
    },
    sensesBy(make) {
      senses ??= make({ store, easel, clock, screenWatch }, window);
      return senses;
    },
    updates,
    browserProblem: readsPhotos(window) ? null : browserTooOld,
    storagePromised: createStoragePromise({
      storage: window.navigator.storage as StorageManager | undefined,
      planned: studio.plan,
    }).promised,
    storageProblem: computed(() => store.trouble.value?.message ?? null),
    async smallStudyOf(painting) {
      const { makeSmallStudy } = await import('./painting/make-small-study.ts');
      const { id } = await makeSmallStudy({ store, ownBox }, painting);
      router.go({ screen: 'plan', paintingId: id });
    },
    goOn,
  };
}
