import type { Painting, Photo } from '../core/decisions/painting.ts';
import type { Transaction } from './schema.ts';
import { StorageProblem } from './storage-problem.ts';
import type { Transactions } from './transactions.ts';

interface PaintingRow {
  readonly painting: Painting;
  /** JPEG; null before it was looked at. */
  readonly thumbnail: ArrayBuffer | null;
}

export interface Paintings {
  /** Photo and painting together or neither. */
  addPainting(painting: Painting, photo: Photo): Promise<void>;
  photo(id: string): Promise<Photo | null>;
  painting(id: string): Promise<Painting | null>;
  /** Newest first; without those put away. */
  paintings(): Promise<readonly PaintingRow[]>;
  /** The only way to change one: over what is kept now, so that two windows add up. */
  changePainting(id: string, change: (kept: Painting) => Painting): Promise<Painting>;
  keepThumbnail(paintingId: string, jpeg: ArrayBuffer): Promise<void>;
}

export function createPaintings(transactions: Transactions, readTimeMs: () => number): Paintings {
  return {
    addPainting: (painting, photo) =>
      transactions.write(painting.id, ['photos', 'paintings'], async (t) => {
        await t.put('photos', photo);
        await t.put('paintings', painting);
      }),
    photo: (id) => transactions.read(['photos'], async (t) => (await t.get('photos', id)) ?? null),
    painting: (id) =>
      transactions.read(['paintings'], async (t) => (await t.get('paintings', id)) ?? null),
    paintings: () =>
      transactions.read(['paintings', 'thumbnails'], async (t) => {
        const all = await t.all('paintings');
        const thumbnails = new Map((await t.all('thumbnails')).map(({ id, jpeg }) => [id, jpeg]));
        return all
          .filter(({ deletedAt }) => deletedAt === undefined)
          .sort((a, b) => b.updatedAt - a.updatedAt)
          .map((painting) => ({ painting, thumbnail: thumbnails.get(painting.id) ?? null }));
      }),
    changePainting: (id, change) =>
      transactions.write(id, ['paintings'], (t) => changeKept(t, id, readTimeMs(), change)),
    keepThumbnail: (paintingId, jpeg) =>
      transactions.write(`thumbnail ${paintingId}`, ['thumbnails'], (t) =>
        t.put('thumbnails', { id: paintingId, jpeg }),
      ),
  };
}

/** Changes a painting within a transaction over 'paintings'; one that is gone is a problem. */
export async function changeKept(
  transaction: Transaction,
  id: string,
  updatedAt: number,
  change: (kept: Painting) => Painting,
): Promise<Painting> {
  const kept = await transaction.get('paintings', id);
  if (!kept) throw new StorageProblem('missing');
  const changed = { ...change(kept), updatedAt };
  await transaction.put('paintings', changed);
  return changed;
}
