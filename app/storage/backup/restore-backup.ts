import { mergeBoxes } from '../../core/paint/merge-boxes.ts';
import type { OwnBox } from '../../core/paint/own-box.ts';
import { isWhole } from '../card-row.ts';
import type { TableName, Transaction } from '../schema.ts';
import type { Transactions } from '../transactions.ts';
import { BackupProblem, damagedBackup } from './backup-problem.ts';
import {
  type BackupPainting,
  type BackupSettings,
  paintingOf,
  settingsOf,
} from './check-backup.ts';
import { fits, type Manifest } from './manifest.ts';
import type { OpenBackup } from './open-backup.ts';
import { boxSetting } from './painting-rows.ts';
import { rowAsText } from './plain-text.ts';
import { restorePainting } from './restore-painting.ts';
import { ownBox } from './row-schemas.ts';

/** What bringing a copy back does with one painting of it. */
export type Arrival =
  /** It is not here. */
  | 'new'
  /** It is here, and the copy has nothing that is not. */
  | 'same'
  /** It is here as it is in the copy, but for photos, plans or lines of the record. */
  | 'completed'
  | 'later in the copy'
  | 'later here'
  /** It was taken away here, and comes back. */
  | 'brought back';

export interface ArrivingPainting {
  readonly id: string;
  readonly title: string;
  readonly arrival: Arrival;
}

/** A copy that has been read through and is whole, and what bringing it back would do. */
export interface CheckedBackup {
  readonly madeAt: number;
  readonly holds: Manifest['holds'];
  readonly places: boolean;
  readonly paintings: readonly ArrivingPainting[];
  /** Her box: not in the copy; with nothing that is not here; or to be joined with the one here. */
  readonly box: 'none' | 'same' | 'joins';
  /** How many paintings are here that the copy does not have: they go where all is replaced. */
  readonly onlyHere: number;
  readonly backup: OpenBackup;
}

/** merge: beside what is here, the later of two versions counts. replace: what is here goes first. */
export type RestoreWay = 'merge' | 'replace';

/**
 * Reads a copy through, every byte of it, before anything is done: rejects with a BackupProblem where anything is not
 * as it should be. One painting, and one photo, at a time.
 */
export async function checkBackup(
  signal: AbortSignal,
  transactions: Transactions,
  backup: OpenBackup,
  onPart?: (part: number) => void,
): Promise<CheckedBackup> {
  const { manifest } = backup;
  const paintings: ArrivingPainting[] = [];
  for (const [i, { folder }] of manifest.paintings.entries()) {
    const found = await paintingOf(signal, backup, folder);
    for (const { file } of found.file.photos) await backup.bytes(signal, file);
    const { id, title } = found.file.painting;
    const arrival = await transactions.read(everyTable, (t) => arrivalOf(t, found));
    paintings.push({ id, title, arrival });
    onPart?.((i + 1) / manifest.paintings.length);
  }
  refuseTwice(paintings);
  const { box } = await settingsOf(signal, backup);
  const ids = new Set(paintings.map(({ id }) => id));
  const onlyHere = await transactions.read(['cards'], async (t) =>
    (await t.all('cards')).filter(({ id, deletedAt }) => !ids.has(id) && deletedAt === undefined),
  );
  const boxHere = await transactions.read(['settings'], boxIn);
  const joins = box && rowAsText(joinedBox(boxHere, box)) !== rowAsText(boxHere);
  const { madeAt, holds, places } = manifest;
  return {
    ...{ madeAt, holds, places, paintings, backup },
    box: !box ? 'none' : joins ? 'joins' : 'same',
    onlyHere: onlyHere.length,
  };
}

/** Brings a copy back: all of it in one transaction, or nothing. */
export async function restoreBackup(
  signal: AbortSignal,
  transactions: Transactions,
  { backup }: CheckedBackup,
  way: RestoreWay,
  readTimeMs: () => number,
  onPart?: (part: number) => void,
): Promise<void> {
  const { manifest } = backup;
  const settings = await settingsOf(signal, backup);
  await sayingWhy(signal, transactions, async (t) => {
    if (way === 'replace' && manifest.holds === 'everything') await clearPaintings(t);
    for (const [i, { folder }] of manifest.paintings.entries()) {
      const painting = await waiting(t, paintingOf(signal, backup, folder));
      await restorePainting(t, painting, {
        readTimeMs,
        alone: manifest.holds === 'painting',
        prefer: way === 'replace' ? 'the copy' : 'the later',
        bytesOf: async ({ file }) => (await waiting(t, backup.bytes(signal, file))).buffer,
      });
      onPart?.((i + 1) / manifest.paintings.length);
    }
    await putSettings(t, settings, way);
  });
}

const what = 'bringing back a copy';

/** A fault of the copy itself is no fault of the database, and nothing of hers waits to be saved because of it. */
async function sayingWhy(
  signal: AbortSignal,
  transactions: Transactions,
  work: (t: Transaction) => Promise<void>,
): Promise<void> {
  try {
    await transactions.write(what, everyTable, work);
  } catch (fault) {
    await transactions.write(what, ['settings'], async () => {}).catch(() => undefined);
    signal.throwIfAborted();
    const cause = fault instanceof Error ? fault.cause : undefined;
    throw cause instanceof BackupProblem ? cause : fault;
  }
}

const contents: readonly TableName[] = [
  ...(['photos', 'paintings', 'cards', 'thumbnails', 'plans', 'readings'] as const),
  ...(['sessions', 'events'] as const),
];
const everyTable: readonly TableName[] = [...contents, 'settings'];

/**
 * Waits for something outside the database within a transaction. A transaction ends as soon as nothing is asked of it
 * (W3C Indexed Database API 3.0, 5.9), so something is asked until the answer is there: the next row can then be put.
 */
async function waiting<T>(t: Transaction, promise: Promise<T>): Promise<T> {
  let settled = false;
  const seen = promise.then(
    (value) => {
      settled = true;
      return { value };
    },
    (fault: unknown) => {
      settled = true;
      return { fault };
    },
  );
  while (!settled) await t.get('settings', 'nothing is called so');
  const found = await seen;
  if ('fault' in found) throw found.fault;
  return found.value;
}

async function clearPaintings(t: Transaction): Promise<void> {
  for (const table of contents) await t.clear(table);
  for (const { id } of await t.all('settings'))
    if (/^(note draft|record photo) /.test(id)) await t.remove('settings', id);
}

const boxIn = async (t: Transaction): Promise<unknown> =>
  (await t.get('settings', boxSetting))?.value ?? null;

const joinedBox = (here: unknown, arriving: OwnBox): OwnBox =>
  fits(ownBox, here) ? mergeBoxes(here as OwnBox, arriving) : arriving;

async function putSettings(
  t: Transaction,
  { box, settings }: BackupSettings,
  way: RestoreWay,
): Promise<void> {
  if (box) {
    const value = way === 'merge' ? joinedBox(await boxIn(t), box) : box;
    await t.put('settings', { id: boxSetting, value });
  }
  for (const [id, value] of settings)
    if (way === 'replace' || !(await t.get('settings', id))) await t.put('settings', { id, value });
}

function refuseTwice(paintings: readonly ArrivingPainting[]): void {
  if (new Set(paintings.map(({ id }) => id)).size !== paintings.length)
    throw damagedBackup('a painting is there twice');
}

async function arrivalOf(t: Transaction, found: BackupPainting): Promise<Arrival> {
  const { painting } = found.file;
  const here: unknown = await t.get('paintings', painting.id);
  if (!isWhole(here)) return 'new';
  if (here.deletedAt !== undefined) return 'brought back';
  if (painting.updatedAt > here.updatedAt) return 'later in the copy';
  if (painting.updatedAt < here.updatedAt) return 'later here';
  return (await isAllHere(t, found)) ? 'same' : 'completed';
}

async function isAllHere(t: Transaction, { file, plans }: BackupPainting): Promise<boolean> {
  for (const { id } of file.photos) if (!(await t.get('photos', id))) return false;
  for (const { id } of plans) if (!(await t.get('plans', id))) return false;
  for (const { sessionId, seq } of file.events)
    if (!(await t.get('events', [sessionId, seq]))) return false;
  return true;
}
