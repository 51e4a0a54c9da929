import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Sheet } from '../../core/reference/sheet.ts';
import type { CardRow } from '../../storage/card-row.ts';
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

/** One that is damaged can't be opened, only taken away. */
type PaintingStage = 'study' | 'photo' | 'plan' | 'easel' | 'finished' | 'damaged';

/** All paintings kept on this device, the newest first. */
export interface Shelf {
  /** Those that hang so far: the rest are hung when they are looked for. */
  readonly paintings: ReadonlySignal<readonly PaintingCard[]>;
  /** How many more there are. */
  readonly more: ReadonlySignal<number>;
  showMore(): Promise<void>;
  /** The one to go on with; null before the first. */
  readonly last: ReadonlySignal<PaintingCard | null>;
  /** The one taken away last, while it can still be brought back. */
  readonly removed: ReadonlySignal<{ readonly id: string; readonly title: string } | null>;
  /** How many photos wait to be chosen among. */
  readonly candidates: ReadonlySignal<number>;
  readonly keeping: ReadonlySignal<string>;
  readonly problem: ReadonlySignal<string | null>;
  lastSheet(): Sheet | null;
  /** Answers when cards and pictures are there; the cards are shown before their pictures. */
  refresh(): Promise<void>;
  remove(id: string): Promise<void>;
  bringBack(): Promise<void>;
}

type Place = Pick<PaintingCard, 'place' | 'stage'>;

function placeOf({ damaged, purpose, sessionId, stand, planned }: CardRow): Place {
  if (damaged) return { place: 'damaged: it can’t be opened', stage: 'damaged' };
  if (purpose === 'study') return { place: 'study only', stage: 'study' };
  if (sessionId === null)
    return planned
      ? { place: 'plan ready', stage: 'plan' }
      : { place: 'not looked at yet', stage: 'photo' };
  if (!stand) return { place: 'at the easel', stage: 'easel' };
  const { step, steps, minutes } = stand;
  return minutes === null
    ? { place: `at the easel, step ${step} of ${steps}`, stage: 'easel' }
    : { place: `painted in ${minutes} min`, stage: 'finished' };
}

/** Those in sight hang first, with their pictures; then so many at a time (own). */
const inSight = 12;
const hungAtOnce = 48;

interface ShownPicture {
  readonly pictureAt: number;
  readonly address: string;
}

export function createShelf(store: Store): Shelf {
  const cards = signal<readonly CardRow[]>([]);
  const hung = signal(inSight);
  const pictures = signal<ReadonlyMap<string, ShownPicture>>(new Map());
  const candidates = signal(0);
  const removed = signal<{ id: string; title: string } | null>(null);
  const problem = signal<string | null>(null);
  let refreshes = 0;

  const cardOf = (card: CardRow): PaintingCard => ({
    id: card.id,
    title: card.title,
    picture: pictures.value.get(card.id)?.address ?? '',
    ...placeOf(card),
  });
  const hanging = computed(() => cards.value.slice(0, hung.value));
  const paintings = computed(() => hanging.value.map(cardOf));

  async function tryQuietly(work: () => Promise<void>): Promise<void> {
    try {
      await work();
      problem.value = null;
    } catch (fault) {
      problem.value = describeFault(fault);
    }
  }

  /** Pictures that are not shown yet, or were kept anew; those no longer needed are given up. */
  async function readPictures(stillNewest: () => boolean): Promise<void> {
    const isShown = ({ id, pictureAt }: CardRow): boolean =>
      pictures.value.get(id)?.pictureAt === pictureAt;
    const stays = new Set(cards.value.filter(isShown).map(({ id }) => id));
    const shown = new Map(pictures.value);
    for (const [id, { address }] of shown) {
      if (stays.has(id)) continue;
      URL.revokeObjectURL(address);
      shown.delete(id);
    }
    pictures.value = shown;
    const missing = hanging.value.filter((card) => card.pictureAt !== null && !isShown(card));
    if (!missing.length) return;
    const found = await store.cardPictures(missing.map(({ id }) => id));
    if (!stillNewest()) return;
    const more = new Map(pictures.value);
    missing.forEach(({ id, pictureAt }, i) => {
      const jpeg = found[i];
      if (jpeg && pictureAt !== null)
        more.set(id, { pictureAt, address: URL.createObjectURL(new Blob([jpeg])) });
    });
    pictures.value = more;
  }

  async function read(): Promise<void> {
    const mine = ++refreshes;
    const stillNewest = (): boolean => mine === refreshes;
    const all = await store.cards();
    if (!stillNewest()) return;
    const kept = all.filter(({ deletedAt }) => deletedAt === undefined);
    cards.value = kept.filter(({ purpose }) => purpose !== 'candidate');
    candidates.value = kept.length - cards.value.length;
    await readPictures(stillNewest);
    if (hung.value < hungAtOnce && stillNewest()) {
      hung.value = hungAtOnce;
      await readPictures(stillNewest);
    }
    await store.discardPutAway('old');
    const [last] = await store.paintingsPutAway();
    if (stillNewest()) removed.value = last ? { id: last.id, title: last.title } : null;
  }

  const refresh = (): Promise<void> => tryQuietly(read);
  /** What could not be done is still said when the wall has been looked at again. */
  async function doThenRefresh(work: () => Promise<void>): Promise<void> {
    await tryQuietly(work);
    const wrong = problem.value;
    await refresh();
    problem.value ??= wrong;
  }
  return {
    paintings,
    more: computed(() => Math.max(0, cards.value.length - hung.value)),
    async showMore() {
      hung.value += hungAtOnce;
      const mine = refreshes;
      await tryQuietly(() => readPictures(() => mine === refreshes));
    },
    last: computed(() => {
      const card = cards.value.find(({ damaged }) => !damaged);
      return card ? cardOf(card) : null;
    }),
    candidates,
    removed,
    problem,
    keeping: computed(() =>
      store.keeps
        ? 'There is no account and no server.'
        : 'This window keeps nothing after it is closed.',
    ),
    lastSheet: () =>
      cards.value.find(({ studyOf, sheet }) => studyOf === undefined && sheet)?.sheet ?? null,
    refresh,
    remove: (id) => doThenRefresh(() => store.putAway(id)),
    async bringBack() {
      const last = removed.value;
      if (last) await doThenRefresh(() => store.bringBack(last.id));
    },
  };
}
