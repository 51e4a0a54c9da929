import { copyReminder } from '../../core/words/copies.ts';
import type { CardRow } from '../../storage/card-row.ts';
import type { Store } from '../../storage/open-store.ts';

/** When she kept a copy of everything last, and when she put the reminder away; 0: never. Ms since 1970. */
interface CopyTimes {
  readonly copyAt: number;
  readonly awayAt: number;
}

const settingName = 'last copy';

type ReminderStore = Pick<Store, 'cards' | 'setting' | 'keepSetting'>;

const timeOf = (value: unknown): number =>
  typeof value === 'number' && Number.isFinite(value) ? value : 0;

export async function copyTimes(store: Pick<Store, 'setting'>): Promise<CopyTimes> {
  const kept = await store.setting(settingName).catch(() => null);
  const { copyAt, awayAt } = (typeof kept === 'object' && kept ? kept : {}) as Partial<CopyTimes>;
  return { copyAt: timeOf(copyAt), awayAt: timeOf(awayAt) };
}

/** Notes that a copy was handed out, or that she does not want to hear of it now. */
export async function noteCopyTime(
  store: Pick<Store, 'setting' | 'keepSetting'>,
  news: Partial<CopyTimes>,
): Promise<void> {
  await store.keepSetting(settingName, { schema: 1, ...(await copyTimes(store)), ...news });
}

/** So many paintings changed are much, and one is after so long (own). */
const many = 3;
const longMs = 30 * 24 * 3_600_000;

/**
 * The line that reminds her; null while there is no need. A painting counts when it was changed after the last copy,
 * and after she last put the line away.
 */
export function reminderOf(
  cards: readonly Pick<CardRow, 'updatedAt' | 'deletedAt' | 'damaged'>[],
  { copyAt, awayAt }: CopyTimes,
  timeMs: number,
): string | null {
  const since = Math.max(copyAt, awayAt);
  const changed = cards.filter(
    ({ updatedAt, deletedAt, damaged }) => !damaged && deletedAt === undefined && updatedAt > since,
  );
  const oldest = Math.min(...changed.map(({ updatedAt }) => updatedAt));
  if (changed.length < many && timeMs - oldest < longMs) return null;
  if (changed.length === 0) return null;
  return copyReminder(copyAt > 0 ? changed.length : null);
}

export async function findReminder(store: ReminderStore, timeMs: number): Promise<string | null> {
  try {
    return reminderOf(await store.cards(), await copyTimes(store), timeMs);
  } catch {
    return null; // what can't be read is said elsewhere
  }
}
