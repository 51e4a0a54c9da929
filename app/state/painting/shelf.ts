import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Painting } from '../../core/decisions/painting.ts';
import { minuteMs } from '../../core/limits.ts';
import type { Sheet } from '../../core/reference/sheet.ts';
import { foldSession } from '../../core/session/fold-session.ts';
import type { Store } from '../../storage/open-store.ts';
import { describeFault } from '../describe-fault.ts';

/** A painting as it hangs on the wall of the first screen. */
export interface PaintingCard {
  readonly id: string;
  readonly title: string;
  /** Address of its picture, or empty before it was looked at. */
  readonly picture: string;
  /** Where it stands: 'step 3 of 11'. */
  readonly place: string;
  readonly stage: PaintingStage;
}

type PaintingStage = 'study' | 'photo' | 'plan' | 'easel' | 'finished';

/** All paintings kept on this device, the newest first. */
export interface Shelf {
  readonly paintings: ReadonlySignal<readonly PaintingCard[]>;
  /** The one taken away last, while it can still be brought back. */
  readonly removed: ReadonlySignal<{ readonly id: string; readonly title: string } | null>;
  /** How many photos wait to be chosen among. */
  readonly candidates: ReadonlySignal<number>;
  readonly keeping: ReadonlySignal<string>;
  readonly problem: ReadonlySignal<string | null>;
  lastSheet(): Sheet | null;
  refresh(): Promise<void>;
  remove(id: string): Promise<void>;
  bringBack(): Promise<void>;
}

type Place = Pick<PaintingCard, 'place' | 'stage'>;

export function createShelf(store: Store): Shelf {
  const cards = signal<readonly PaintingCard[]>([]);
  const candidates = signal(0);
  const removed = signal<{ id: string; title: string } | null>(null);
  const problem = signal<string | null>(null);
  let sheet: Sheet | null = null;

  async function placeOf(painting: Painting): Promise<Place> {
    if (painting.purpose === 'study') return { place: 'study only', stage: 'study' };
    const sessionId = painting.sessionIds.at(-1);
    if (sessionId === undefined)
      return painting.planIds.length
        ? { place: 'plan ready', stage: 'plan' }
        : { place: 'not looked at yet', stage: 'photo' };
    const { plan } = await store.session(sessionId);
    const session = foldSession(plan.steps, await store.events(sessionId));
    const { phase, stepIndex, finishedAtMs } = session;
    const minutes = Math.max(1, Math.round((finishedAtMs ?? 0) / minuteMs));
    return phase === 'finished'
      ? { place: `painted in ${minutes} min`, stage: 'finished' }
      : { place: `at the easel, step ${stepIndex + 1} of ${plan.steps.length}`, stage: 'easel' };
  }

  async function tryQuietly(work: () => Promise<void>): Promise<void> {
    try {
      await work();
      problem.value = null;
    } catch (fault) {
      problem.value = describeFault(fault);
    }
  }

  async function read(): Promise<void> {
    await store.discardPutAway('old');
    const all = await store.paintings();
    const rows = all.filter(({ painting }) => painting.purpose !== 'candidate');
    candidates.value = all.length - rows.length;
    sheet = rows.find(({ painting }) => !painting.studyOf)?.painting.reference.sheet ?? null;
    const before = cards.value;
    cards.value = await Promise.all(
      rows.map(async ({ painting, thumbnail }) => ({
        id: painting.id,
        title: painting.title,
        picture: thumbnail ? URL.createObjectURL(new Blob([thumbnail])) : '',
        ...(await placeOf(painting)),
      })),
    );
    for (const { picture } of before) if (picture) URL.revokeObjectURL(picture);
    const [last] = await store.paintingsPutAway();
    removed.value = last ? { id: last.id, title: last.title } : null;
  }

  const refresh = (): Promise<void> => tryQuietly(read);
  return {
    paintings: cards,
    candidates,
    removed,
    problem,
    keeping: computed(() =>
      store.keeps
        ? 'There is no account and no server.'
        : 'This window keeps nothing after it is closed.',
    ),
    lastSheet: () => sheet,
    refresh,
    async remove(id) {
      await tryQuietly(() => store.putAway(id));
      await refresh();
    },
    async bringBack() {
      const last = removed.value;
      if (!last) return;
      await tryQuietly(() => store.bringBack(last.id));
      await refresh();
    },
  };
}
