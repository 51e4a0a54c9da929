import type { OwnBox } from '../../core/paint/own-box.ts';
import { photoHeader } from '../../core/reference/photo-header.ts';
import type { PlanRow, ReadingRow } from '../schema.ts';
import { damagedBackup } from './backup-problem.ts';
import { checked } from './manifest.ts';
import type { OpenBackup } from './open-backup.ts';
import { copiedSettings, settingRead } from './painting-rows.ts';
import { ownBox, type PaintingFile, paintingFile, planRow, readingRow } from './row-schemas.ts';

/** One painting of a copy, with all but the bytes of its photos. */
export interface BackupPainting {
  readonly file: PaintingFile;
  readonly plans: readonly PlanRow[];
  readonly readings: readonly ReadingRow[];
}

export interface BackupSettings {
  readonly box: OwnBox | null;
  readonly settings: ReadonlyMap<string, unknown>;
}

/** A painting of a copy, checked whole: every row, and what its rows say of each other. */
export async function paintingOf(
  signal: AbortSignal,
  backup: OpenBackup,
  folder: string,
): Promise<BackupPainting> {
  const path = `paintings/${folder}/`;
  const names = backup.manifest.files.map(({ name }) => name).filter((n) => n.startsWith(path));
  const file = checked(paintingFile, await backup.row(signal, `${path}painting.json`), folder);
  const plans: PlanRow[] = [];
  const readings: ReadingRow[] = [];
  for (const name of names) {
    if (name.startsWith(`${path}plan-`))
      plans.push(checked(planRow, await backup.row(signal, name), name));
    if (name.startsWith(`${path}reading-`)) {
      const row = checked(readingRow, await backup.row(signal, name), name);
      await refuseOtherPixels(signal, row);
      readings.push(row);
    }
  }
  const found = { file, plans, readings };
  refuseStrangers(found, names);
  return found;
}

/** Her box and settings in a copy, checked. */
export async function settingsOf(signal: AbortSignal, backup: OpenBackup): Promise<BackupSettings> {
  const has = (name: string): boolean => backup.manifest.files.some((each) => each.name === name);
  const box = has('box.json')
    ? checked(ownBox, await backup.row(signal, 'box.json'), 'the box')
    : null;
  const settings = new Map<string, unknown>();
  if (!has('settings.json')) return { box, settings };
  const rows = await backup.row(signal, 'settings.json');
  if (typeof rows !== 'object' || rows === null) throw damagedBackup('settings');
  for (const [name, value] of Object.entries(rows)) {
    const read = copiedSettings.includes(name) ? settingRead(name, value) : null;
    if (read === null) throw damagedBackup(`the setting ${name}`);
    settings.set(name, read);
  }
  return { box, settings };
}

const isOnce = (ids: readonly string[]): boolean => new Set(ids).size === ids.length;

/** Rows that belong to another painting, stand there twice, or name files that are not there. */
function refuseStrangers({ file, plans, readings }: BackupPainting, names: readonly string[]) {
  const { painting, photos, sessions, events, notes, lastPhotos } = file;
  const sessionIds = new Set(sessions.map(({ id }) => id));
  const photoIds = new Set([
    painting.reference.photoId,
    ...events.flatMap(({ what }) => (what.kind === 'photo' ? [what.photoId] : [])),
    ...lastPhotos.map(({ photoId }) => photoId),
  ]);
  const files = photos.map((photo) => photo.file);
  const its = names.filter((name) => /\/photo-\d+\.[a-z]+$/.test(name));
  const sound =
    [...plans, ...readings].every(({ paintingId }) => paintingId === painting.id) &&
    plans.every(({ id, plan }) => id === plan.id) &&
    readings.every(({ id }) => id.startsWith(`${painting.id} `)) &&
    isOnce(plans.map(({ id }) => id)) &&
    isOnce(readings.map(({ id }) => id)) &&
    isOnce(sessions.map(({ id }) => id)) &&
    isOnce(photos.map(({ id }) => id)) &&
    isOnce(events.map(({ sessionId, seq }) => `${seq} ${sessionId}`)) &&
    [...events, ...notes, ...lastPhotos].every(({ sessionId }) => sessionIds.has(sessionId)) &&
    photos.every(({ id }) => photoIds.has(id)) &&
    isOnce(files) &&
    its.length === files.length &&
    files.every((name) => its.includes(name));
  if (!sound) throw damagedBackup(`rows of ${painting.id} do not belong together`);
}

/** Largest picture any canvas of ours holds, px. */
const mostPixels = 16_777_216;

/** A map that unpacks to more or less than its pixels, a picture that is larger than it may be. */
async function refuseOtherPixels(signal: AbortSignal, row: ReadingRow): Promise<void> {
  const { width, height } = row.reading.raster;
  for (const map of [row.slotMap, row.lightnessMap])
    if (map && (await lengthOf(signal, map, width * height)) !== width * height)
      throw damagedBackup(`a map of ${row.id} is of another size`);
  const picture = photoHeader(new Uint8Array(row.referenceJpeg));
  if (picture && picture.width * picture.height > mostPixels)
    throw damagedBackup(`the picture of ${row.id} is too large`);
}

/** How long packed bytes are; left as soon as they are longer than `most`. Nothing of it is kept. */
async function lengthOf(
  signal: AbortSignal,
  { packing, bytes }: ReadingRow['slotMap'],
  most: number,
): Promise<number> {
  if (packing === 'plain') return bytes.byteLength;
  let length = 0;
  const count = new WritableStream<Uint8Array>({
    write(chunk) {
      length += chunk.length;
      if (length > most) throw new RangeError('longer');
    },
  });
  try {
    await new Blob([bytes])
      .stream()
      .pipeThrough(new DecompressionStream('deflate-raw'))
      .pipeTo(count, { signal });
  } catch {
    signal.throwIfAborted();
    return -1; // too long, or no packed bytes at all
  }
  return length;
}
