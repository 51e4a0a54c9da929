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

export interface CrashGuard {
  /** What was left over from the run before; null where all ended well. */
  readonly left: CrashNote | null;
  /** True where this photo's reading must not be started by itself, only when asked for. */
  waits(photoId: string): boolean;
  /** The working size for this photo, px: smaller from its first crash on. */
  sizeFor(photoId: string): number;
  begin(note: CrashNote): void;
  /** The reading ended, well or not; also to be called on `pagehide`, which no crash fires. */
  end(): void;
}

/** The working size after a crash: a quarter of the pixels. */
const smallLongSidePx = rasterLongSidePx / 2;

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
export function createCrashGuard(store: NoteStore): CrashGuard {
  const left = readNote(store);
  const tryQuietly = (write: () => void): void => {
    try {
      write();
    } catch {
      // storage is full or shut off: reading goes on without the note
    }
  };
  const suspect = new Set(left ? [left.photoId] : []);
  const small = new Set([...readIds(store), ...suspect]);
  if (left) tryQuietly(() => store.setItem(smallKey, JSON.stringify([...small])));
  let reading: string | null = null;
  return {
    left,
    waits: (photoId) => suspect.has(photoId),
    sizeFor: (photoId) => (small.has(photoId) ? smallLongSidePx : rasterLongSidePx),
    begin(note) {
      reading = note.photoId;
      tryQuietly(() => store.setItem(key, JSON.stringify(note)));
    },
    end() {
      if (reading === null) return; // a note from the run before stays until its own photo is read
      suspect.delete(reading);
      reading = null;
      tryQuietly(() => {
        if (left && suspect.has(left.photoId)) store.setItem(key, JSON.stringify(left));
        else store.removeItem(key);
      });
    },
  };
}
