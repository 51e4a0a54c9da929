import type { Painting } from '../core/decisions/painting.ts';
import { type CardRow, cardOf, isWhole, readCard } from './card-row.ts';
import type { Transaction } from './schema.ts';
import { StorageProblem } from './storage-problem.ts';
import type { Transactions } from './transactions.ts';

export interface Cards {
  /** Newest first, those put away too. A card that can't be read is marked as damaged. */
  cards(): Promise<readonly CardRow[]>;
  /** Pictures of cards, JPEG, in the order asked for; null where there is none. */
  cardPictures(ids: readonly string[]): Promise<readonly (ArrayBuffer | null)[]>;
}

export function createCards(transactions: Transactions): Cards {
  return {
    cards: () =>
      transactions.read(['cards'], async (t) =>
        (await t.all('cards')).map(readCard).sort((a, b) => b.updatedAt - a.updatedAt),
      ),
    cardPictures: (ids) =>
      transactions.read(['thumbnails'], (t) =>
        Promise.all(
          ids.map(async (id) => {
            const jpeg = (await t.get('thumbnails', id))?.jpeg;
            return jpeg instanceof ArrayBuffer ? jpeg : null;
          }),
        ),
      ),
  };
}

/** Keeps a painting and its card, within a transaction over both: the only way a painting is written. */
export async function putPainting(t: Transaction, painting: Painting): Promise<void> {
  await t.put('paintings', painting);
  await t.put('cards', cardOf(painting, await t.get('cards', painting.id)));
}

/** Notes on a card what its painting does not say, within a transaction over the cards. */
export async function changeCard(
  t: Transaction,
  id: string,
  news: Partial<Pick<CardRow, 'stand' | 'pictureAt' | 'deletedAt' | 'damaged'>>,
): Promise<void> {
  const card = await t.get('cards', id);
  if (card) await t.put('cards', { ...card, ...news });
}

/** A painting within a transaction over 'paintings'; null where it is not there. Errors: 'damaged'. */
export async function wholePainting(t: Transaction, id: string): Promise<Painting | null> {
  const row: unknown = await t.get('paintings', id);
  if (row === undefined) return null;
  if (!isWhole(row)) throw new StorageProblem('damaged');
  return row;
}
