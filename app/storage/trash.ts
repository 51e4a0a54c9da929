import type { Painting } from '../core/decisions/painting.ts';
import { changeKept } from './paintings.ts';
import type { TableName, Transaction } from './schema.ts';
import { forgetKeepsakes } from './sessions.ts';
import type { Transactions } from './transactions.ts';

/** How long a painting she deleted can be brought back, ms. */
const putAwayForMs = 7 * 24 * 3_600_000;

export interface Trash {
  /** Out of the list, but it can be brought back for a week. */
  putAway(id: string): Promise<void>;
  bringBack(id: string): Promise<void>;
  /** Those put away, the latest first. */
  paintingsPutAway(): Promise<readonly Painting[]>;
  /** For good, with photos, plans, readings, sessions and all: together or not at all. */
  discard(id: string): Promise<void>;
  /** Discards what was put away longer ago than a week, or everything put away; answers how many. */
  discardPutAway(which: 'old' | 'all'): Promise<number>;
}

const everything: readonly TableName[] = [
  'photos',
  'paintings',
  'thumbnails',
  'plans',
  'readings',
  'sessions',
  'events',
  'settings',
];

export function createTrash(transactions: Transactions, readTimeMs: () => number): Trash {
  const change = (id: string, how: (kept: Painting) => Painting): Promise<void> =>
    transactions.write(id, ['paintings'], async (t) => {
      // Its place in the list is that of her last work, not of the tidying.
      const kept = await t.get('paintings', id);
      await changeKept(t, id, kept?.updatedAt ?? readTimeMs(), how);
    });
  return {
    putAway: (id) => change(id, (kept) => ({ ...kept, deletedAt: readTimeMs() })),
    bringBack: (id) => change(id, ({ deletedAt: _, ...kept }) => kept),
    paintingsPutAway: () =>
      transactions.read(['paintings'], async (t) =>
        (await t.all('paintings'))
          .filter(({ deletedAt }) => deletedAt !== undefined)
          .sort((a, b) => (b.deletedAt ?? 0) - (a.deletedAt ?? 0)),
      ),
    discard: (id) => transactions.write(id, everything, (t) => discardWhole(t, id)),
    discardPutAway: (which) =>
      transactions.write('putting away', everything, async (t) => {
        const limit = which === 'all' ? Number.POSITIVE_INFINITY : readTimeMs() - putAwayForMs;
        const old = (await t.all('paintings')).filter(
          ({ deletedAt }) => deletedAt !== undefined && deletedAt < limit,
        );
        for (const { id } of old) await discardWhole(t, id);
        return old.length;
      }),
  };
}

async function discardWhole(t: Transaction, id: string): Promise<void> {
  const painting = await t.get('paintings', id);
  if (!painting) return;
  await t.remove('paintings', id);
  await t.remove('thumbnails', id);
  const { photoId } = painting.reference;
  const others = await t.all('paintings');
  if (!others.some(({ reference }) => reference.photoId === photoId))
    await t.remove('photos', photoId);
  for (const table of ['plans', 'readings'] as const)
    for (const row of await t.where(table, 'paintingId', id)) await t.remove(table, row.id);
  for (const session of await t.where('sessions', 'paintingId', id)) {
    const log = await t.where('events', 'sessionId', session.id);
    await forgetKeepsakes(t, session.id, log);
    for (const { sessionId, seq } of log) await t.remove('events', [sessionId, seq]);
    await t.remove('sessions', session.id);
  }
}
