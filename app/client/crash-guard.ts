import { rasterLongSidePx } from '../core/limits.ts';
/** Where the note is kept: `localStorage` fits, since it is written at once and survives a crash. */
export interface NoteStore {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

/** A reading that was begun and never ended: most likely the page died of it. */
interface CrashNote {
  readonly photoId: string;
  readonly longSidePx: number;
}

/** Whether a window is at a reading: a lock that ends with its window, however that ends. */
export interface ReadingLock {
  hold(photoId: string): void;
  release(): void;
  /** Also by another window. */
  isHeld(photoId: string): Promise<boolean>;
}

export interface CrashGuard {
  /** Settles when it is known whether another window is still at the reading that was left over. */
  readonly ready: Promise<void>;
  /** What was left over from the run before; null where all ended well. */
  readonly left: CrashNote | null;
  /** True where this photo's reading must not be started by itself, only when asked for. */
  waits(photoId: string): boolean;
  /** The working size for this photo, px: smaller after a crash; for good only after a second one. */
  sizeFor(photoId: string): number;
  begin(note: CrashNote): void;
  /** The reading ended; `well`: it was read. Also to be called on `pagehide`, which no crash fires. */
  end(well?: boolean): void;
  /** What was read of this photo before could be shown: it need not wait. */
  shown(photoId: string): void;
}

/** The working size after a crash: a quarter of the pixels. */
const smallLongSidePx = rasterLongSidePx / 2;

const onceName = (photoId: string): string => `once ${photoId}`;

const key = 'reading-under-way';
const smallKey = 'photos-read-small';

function readNote(store: NoteStore): CrashNote | null {
  try {
    const found: unknown = JSON.parse(store.getItem(key) ?? 'null');
    if (typeof found !== 'object' || found === null) return null;
    const { photoId, longSidePx } = found as Record<string, unknown>;
    return typeof photoId === 'string' && typeof longSidePx === 'number'
      ? { photoId, longSidePx }
      : null;
  } catch {
    return null; // an unreadable note or a store that is shut off says nothing about a crash
  }
}

function readIds(store: NoteStore): string[] {
  try {
    const found: unknown = JSON.parse(store.getItem(smallKey) ?? '[]');
    return Array.isArray(found) ? found.filter((id): id is string => typeof id === 'string') : [];
  } catch {
    return []; // likewise
  }
}

/**
 * Keeps the page out of a crash loop: a page killed while reading a photo tells nobody, so a note
 * is left before and taken away after. Found again at the next start, that reading waits to be
 * asked for, at a smaller size. A store that is full or shut off costs only this protection.
 */
export function createCrashGuard(store: NoteStore, lock: ReadingLock = noLock): CrashGuard {
  const left = readNote(store);
  const tryQuietly = (write: () => void): void => {
    try {
      write();
    } catch {
      // storage is full or shut off: reading goes on without the note
    }
  };
  const suspect = new Set(left ? [left.photoId] : []);
  /** Ids of photos to be read small, and `onceName` of those forgiven a first crash. */
  const noted = readIds(store);
  const crashed = [...new Set([...noted, ...suspect])];
  const small = new Set(crashed);
  const keepCrashed = (ids: readonly string[]): void =>
    tryQuietly(() => store.setItem(smallKey, JSON.stringify(ids)));
  let reading: string | null = null;

  async function lookElsewhere(): Promise<void> {
    if (!left) return;
    if (lock === noLock) return keepCrashed(crashed);
    if (await lock.isHeld(left.photoId).catch(() => false)) {
      suspect.clear(); // it is being read in another window
      if (!noted.includes(left.photoId)) small.delete(left.photoId);
    } else keepCrashed(crashed);
  }

  /** A note from the run before stays until its own photo is read. */
  function takeNoteAway(): void {
    tryQuietly(() => {
      if (left && suspect.has(left.photoId)) store.setItem(key, JSON.stringify(left));
      else store.removeItem(key);
    });
  }

  return {
    left,
    ready: lookElsewhere(),
    waits: (photoId) => suspect.has(photoId),
    sizeFor: (photoId) => (small.has(photoId) ? smallLongSidePx : rasterLongSidePx),
    begin(note) {
      reading = note.photoId;
      lock.hold(note.photoId);
      tryQuietly(() => store.setItem(key, JSON.stringify(note)));
    },
    end(well = false) {
      if (reading === null) return;
      const ended = reading;
      suspect.delete(ended);
      reading = null;
      lock.release();
      takeNoteAway();
      // A system may end an app for reasons of its own: once is forgiven, from the next visit on.
      if (well && small.has(ended) && !crashed.includes(onceName(ended)))
        keepCrashed(crashed.map((id) => (id === ended ? onceName(ended) : id)));
    },
    shown(photoId) {
      if (suspect.delete(photoId)) takeNoteAway();
    },
  };
}

const noLock: ReadingLock = { hold() {}, release() {}, isHeld: async () => false };

/** By Web Locks (W3C); without them every reading left over counts as a crash. */
export function createReadingLock(
  locks: Pick<LockManager, 'request' | 'query'> | undefined,
): ReadingLock {
  const nameOf = (photoId: string): string => `reading ${photoId}`;
  let letGo = (): void => {};
  return {
    hold(photoId) {
      letGo();
      locks
        ?.request(
          nameOf(photoId),
          { mode: 'shared' },
          () =>
            new Promise<void>((done) => {
              letGo = done;
            }),
        )
        .catch(() => undefined); // a page being left: its note is taken away as well
    },
    release: () => letGo(),
    async isHeld(photoId) {
      const held = (await locks?.query())?.held ?? [];
      return held.some(({ name }) => name === nameOf(photoId));
    },
  };
}
