import type { Painting } from '../../core/decisions/painting.ts';
import type { SessionEvent } from '../../core/session/session-event.ts';
import { isWhole } from '../card-row.ts';
import { changeCard, putPainting } from '../cards.ts';
import type { Transaction } from '../schema.ts';
import { isLine, lastPhotoName, noteDraftName, noteStand } from '../sessions.ts';
import { damagedBackup } from './backup-problem.ts';
import type { BackupPainting } from './check-backup.ts';
import type { PaintingFile } from './row-schemas.ts';

type PhotoFacts = PaintingFile['photos'][number];

interface RestoreNeeds {
  readonly readTimeMs: () => number;
  /** It is all the copy holds: somebody may have handed it on. */
  readonly alone: boolean;
  /** Where both have the painting: which of the two counts. */
  readonly prefer: 'the later' | 'the copy';
  /** The bytes of a photo, while the transaction waits. */
  readonly bytesOf: (photo: PhotoFacts) => Promise<ArrayBuffer>;
}

/**
 * Puts a painting of a copy beside what is here, within a transaction over everything. One of two versions counts;
 * whatever else only one of them has (photos, plans, sessions, lines of a log) is kept of both.
 */
export async function restorePainting(
  t: Transaction,
  { file, plans, readings }: BackupPainting,
  { readTimeMs, alone, prefer, bytesOf }: RestoreNeeds,
): Promise<void> {
  const { painting, thumbnail, photos, sessions, notes, lastPhotos } = file;
  const { id } = painting;
  const row: unknown = await t.get('paintings', id);
  const here = isWhole(row) ? row : null;
  const takesCopy = !here || prefer === 'the copy' || painting.updatedAt > here.updatedAt;

  for (const facts of photos) await putPhoto(t, facts, bytesOf);
  for (const [table, rows] of [['plans', plans] as const, ['readings', readings] as const])
    for (const each of rows) {
      const there = await t.get(table, each.id);
      if (there && there.paintingId !== id)
        throw damagedBackup(`${each.id} is of another painting`);
      if (!there) await t.put(table, each as never);
    }
  for (const session of sessions) {
    const there = await t.get('sessions', session.id);
    if (there && there.paintingId !== id) throw damagedBackup(`${session.id} is of another`);
    if (!there) await t.put('sessions', { ...session, paintingId: id });
    const lines = file.events.filter(({ sessionId }) => sessionId === session.id);
    await putLog(t, session.id, lines);
  }
  for (const { sessionId, text } of notes) await putAbsent(t, noteDraftName(sessionId), text);
  for (const { sessionId, photoId, key } of lastPhotos)
    await putAbsent(t, lastPhotoName(sessionId), { photoId, key });

  await putPainting(t, here ? joined(painting, here, takesCopy) : asItCame(painting, alone));
  const hasPicture = (await t.get('thumbnails', id)) !== undefined;
  if (thumbnail && (takesCopy || !hasPicture)) await t.put('thumbnails', { id, jpeg: thumbnail });
  if (thumbnail || hasPicture) await changeCard(t, id, { pictureAt: readTimeMs() });
  const last = (await t.get('paintings', id))?.sessionIds.at(-1);
  if (last !== undefined) await noteStand(t, last, undefined);
}

/** Its plan and its decisions as they came: whose paints it is to be painted with is asked. */
function asItCame({ handedOn: _, ...painting }: Painting, alone: boolean): Painting {
  const planId = painting.planIds.at(-1);
  return alone && planId !== undefined
    ? { ...painting, handedOn: { planId, decisions: painting.decisions.length } }
    : painting;
}

/** What was put away here comes back. */
function joined(copy: Painting, here: Painting, takesCopy: boolean): Painting {
  const [later, other] = takesCopy ? [copy, here] : [here, copy];
  const { deletedAt: _, ...base } = later;
  const all = (ids: readonly string[], others: readonly string[]): string[] => [
    ...others.filter((each) => !ids.includes(each)),
    ...ids,
  ];
  return {
    ...base,
    planIds: all(base.planIds, other.planIds),
    sessionIds: all(base.sessionIds, other.sessionIds),
  };
}

/** A photo that is here stays: it may know more than the one in the copy. */
async function putPhoto(
  t: Transaction,
  facts: PhotoFacts,
  bytesOf: RestoreNeeds['bytesOf'],
): Promise<void> {
  const { id, mime, sha256, name } = facts;
  const there = await t.get('photos', id);
  if (there && there.sha256 !== sha256) throw damagedBackup(`${id} is another photo`);
  if (!there) await t.put('photos', { id, mime, sha256, name, bytes: await bytesOf(facts) });
}

/** Lines that go on where the log here ends are added; of two logs that part the longer stays. */
async function putLog(t: Transaction, sessionId: string, lines: readonly SessionEvent[]) {
  const here = (await t.where('events', 'sessionId', sessionId)).filter(isLine);
  const idHere = new Map(here.map(({ seq, id }) => [seq, id]));
  const parts = lines.some(({ seq, id }) => (idHere.get(seq) ?? id) !== id);
  if (parts && lines.length <= here.length) return;
  if (parts) for (const { seq } of here) await t.remove('events', [sessionId, seq]);
  for (const line of lines) if (parts || !idHere.has(line.seq)) await t.put('events', line);
}

async function putAbsent(t: Transaction, name: string, value: unknown): Promise<void> {
  if (!(await t.get('settings', name))) await t.put('settings', { id: name, value });
}
