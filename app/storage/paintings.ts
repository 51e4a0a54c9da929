import type { Painting, Photo } from '../core/decisions/painting.ts';
import { isWhole } from './card-row.ts';
import { changeCard, putPainting, wholePainting } from './cards.ts';
import type { Transaction } from './schema.ts';
import { StorageProblem } from './storage-problem.ts';
import type { Transactions } from './transactions.ts';

interface PaintingRow {
  readonly painting: Painting;
  /** JPEG; null before it was looked at. */
  readonly thumbnail: ArrayBuffer | null;
}

export interface NewPainting {
  readonly painting: Painting;
  readonly photo: Photo;
}

export interface Paintings {
  /** Photo and painting together or neither. */
  addPainting(painting: Painting, photo: Photo): Promise<void>;
  /** Several, all or none. */
  addPaintings(made: readonly NewPainting[]): Promise<void>;
  photo(id: string): Promise<Photo | null>;
  /** Errors: 'damaged', and its card says so from then on. */
  painting(id: string): Promise<Painting | null>;
  /** Newest first; without those put away or damaged. */
  paintings(): Promise<readonly PaintingRow[]>;
  /** The only way to change one: over what is kept now, so that two windows add up. */
  changePainting(id: string, change: (kept: Painting) => Painting): Promise<Painting>;
  keepThumbnail(paintingId: string, jpeg: ArrayBuffer): Promise<void>;
}

export function createPaintings(transactions: Transactions, readTimeMs: () => number): Paintings {
  const addPaintings = (made: readonly NewPainting[]): Promise<void> =>
    transactions.write(
      made.map(({ painting }) => painting.id).join(' '),
      ['photos', 'paintings', 'cards'],
      async (t) => {
        for (const { painting, photo } of made) {
          await t.put('photos', photo);
          await putPainting(t, painting);
        }
      },
    );
  return {
    addPainting: (painting, photo) => addPaintings([{ painting, photo }]),
    addPaintings,
    photo: (id) => transactions.read(['photos'], async (t) => (await t.get('photos', id)) ?? null),
    async painting(id) {
      try {
        return await transactions.read(['paintings'], (t) => wholePainting(t, id));
      } catch (fault) {
        if (fault instanceof StorageProblem && fault.kind === 'damaged')
          await transactions.write(`damage ${id}`, ['cards'], (t) =>
            changeCard(t, id, { damaged: true }),
          );
        throw fault;
      }
    },
    paintings: () =>
      transactions.read(['paintings', 'thumbnails'], async (t) => {
        const all = await t.all('paintings');
        const thumbnails = new Map((await t.all('thumbnails')).map(({ id, jpeg }) => [id, jpeg]));
        return all
          .filter((row) => isWhole(row) && row.deletedAt === undefined)
          .sort((a, b) => b.updatedAt - a.updatedAt)
          .map((painting) => ({ painting, thumbnail: thumbnails.get(painting.id) ?? null }));
      }),
    changePainting: (id, change) =>
      transactions.write(id, ['paintings', 'cards'], (t) =>
        changeKept(t, id, readTimeMs(), change),
      ),
    keepThumbnail: (paintingId, jpeg) =>
      transactions.write(`thumbnail ${paintingId}`, ['thumbnails', 'cards'], async (t) => {
        await t.put('thumbnails', { id: paintingId, jpeg });
        await changeCard(t, paintingId, { pictureAt: readTimeMs() });
      }),
  };
}

/** Changes a painting within a transaction over paintings and cards; one that is gone is a problem. */
export async function changeKept(
  transaction: Transaction,
  id: string,
  updatedAt: number,
  change: (kept: Painting) => Painting,
): Promise<Painting> {
  const kept = await wholePainting(transaction, id);
  if (!kept) throw new StorageProblem('missing');
  const changed = { ...change(kept), updatedAt };
  await putPainting(transaction, changed);
  return changed;
}
