import { type CardRow, isWhole } from './card-row.ts';
import { putPainting } from './cards.ts';
import type { TableName, Transaction } from './schema.ts';
import { forgetKeepsakes, keepsakeNames } from './sessions.ts';
import { StorageProblem } from './storage-problem.ts';
import type { Transactions } from './transactions.ts';

/** How long a painting she deleted can be brought back, ms. */
const putAwayForMs = 7 * 24 * 3_600_000;

export interface Trash {
  /** Out of the list, but it can be brought back for a week. */
  putAway(id: string): Promise<void>;
  bringBack(id: string): Promise<void>;
  /** Those put away, the latest first. */
  paintingsPutAway(): Promise<readonly Pick<CardRow, 'id' | 'title'>[]>;
  /** For good, with photos, plans, readings, sessions and all: together or not at all. */
  discard(id: string): Promise<void>;
  /** Discards what was put away longer ago than a week, or everything put away; answers how many. */
  discardPutAway(which: 'old' | 'all'): Promise<number>;
}

const everything: readonly TableName[] = [
  'photos',
  'paintings',
  'cards',
  'thumbnails',
  'plans',
  'readings',
  'sessions',
  'events',
  'settings',
];

/** `onGone` is told the names of settings that went with a painting: one that waits to be stored must not come after. */
export function createTrash(
  transactions: Transactions,
  readTimeMs: () => number,
  onGone: (settings: readonly string[]) => void,
): Trash {
  /** Its place in the list stays that of her last work. One that is damaged has at least a card. */
  const mark = (id: string, away: { deletedAt?: number }): Promise<void> =>
    transactions.write(`putting away ${id}`, ['paintings', 'cards'], async (t) => {
      const row = await t.get('paintings', id);
      if (isWhole(row)) {
        const { deletedAt: _, ...kept } = row;
        await putPainting(t, { ...kept, ...away });
      } else {
        const card = await t.get('cards', id);
        if (!card) throw new StorageProblem('missing');
        const { deletedAt: _, ...kept } = card;
        await t.put('cards', { ...kept, ...away });
      }
    });
  return {
    putAway: (id) => mark(id, { deletedAt: readTimeMs() }),
    bringBack: (id) => mark(id, {}),
    paintingsPutAway: () =>
      transactions.read(['cards'], async (t) =>
        (await t.all('cards'))
          .filter(({ deletedAt }) => deletedAt !== undefined)
          .sort((a, b) => (b.deletedAt ?? 0) - (a.deletedAt ?? 0)),
      ),
    async discard(id) {
      onGone(await transactions.write(id, everything, (t) => discardWhole(t, id)));
    },
    async discardPutAway(which) {
      const gone = await transactions.write('putting away', everything, async (t) => {
        const limit = which === 'all' ? Number.POSITIVE_INFINITY : readTimeMs() - putAwayForMs;
        const old = (await t.all('cards')).filter(
          ({ deletedAt }) => deletedAt !== undefined && deletedAt < limit,
        );
        const settings: (readonly string[])[] = [];
        for (const { id } of old) settings.push(await discardWhole(t, id));
        return settings;
      });
      onGone(gone.flat());
      return gone.length;
    },
  };
}

/** Also out of a row that is damaged elsewhere. */
function photoIdIn(row: unknown): string | null {
  const photoId = (row as { reference?: { photoId?: unknown } } | undefined)?.reference?.photoId;
  return typeof photoId === 'string' ? photoId : null;
}

/** Answers the names of settings that went with it. */
async function discardWhole(t: Transaction, id: string): Promise<readonly string[]> {
  const row = await t.get('paintings', id);
  await t.remove('paintings', id);
  await t.remove('cards', id);
  await t.remove('thumbnails', id);
  const photoId = photoIdIn(row);
  const others = await t.all('paintings');
  if (photoId !== null && !others.some((other) => photoIdIn(other) === photoId))
    await t.remove('photos', photoId);
  for (const table of ['plans', 'readings'] as const)
    for (const row of await t.where(table, 'paintingId', id)) await t.remove(table, row.id);
  const sessions = await t.where('sessions', 'paintingId', id);
  for (const session of sessions) {
    const log = await t.where('events', 'sessionId', session.id);
    await forgetKeepsakes(t, session.id, log);
    for (const { sessionId, seq } of log) await t.remove('events', [sessionId, seq]);
    await t.remove('sessions', session.id);
  }
  return sessions.flatMap((session) => keepsakeNames(session.id));
}
