import * as v from 'valibot';
import { BackupProblem, damagedBackup } from './backup-problem.ts';
import { rowFromText } from './plain-text.ts';

/** What a copy calls itself. */
export const backupFormat = 'firstwash copy';

/** What a file with the remains of a damaged painting calls itself: to be looked at, never brought back. */
export const remainsFormat = 'firstwash remains';

export const manifestName = 'manifest.json';

/** What a file of a copy holds, by its name. */
export type FileKind = 'painting' | 'plan' | 'reading' | 'photo' | 'box' | 'settings';

/**
 * From one version of the format to the next: `file` is given what each file of JSON holds. Only ever
 * appended to, never changed: a copy may be years old. The version of the format is the length of the list plus one.
 */
export interface Climb {
  manifest(before: Readonly<Record<string, unknown>>): Record<string, unknown>;
  file(kind: FileKind, before: unknown): unknown;
}

export const CLIMBS: readonly Climb[] = [
  // Version 2: logs may hold comparisons of her sheet, and advice taken; those of version 1 hold none.
  { manifest: (before) => ({ ...before, version: 2 }), file: (_kind, before) => before },
  // Version 3: paintings may say with which plan they were handed on; those of version 2 do not.
  { manifest: (before) => ({ ...before, version: 3 }), file: (_kind, before) => before },
  // Version 4: plans may say codes and figures; those of version 3 hold sentences, and keep them.
  { manifest: (before) => ({ ...before, version: 4 }), file: (_kind, before) => before },
  // Version 5: readings may say codes and figures; those of version 4 hold sentences, and keep them.
  { manifest: (before) => ({ ...before, version: 5 }), file: (_kind, before) => before },
];

/** Names are ours alone: nothing of them comes from her, and none leads out of the copy. */
const names: readonly (readonly [FileKind, RegExp])[] = [
  ['painting', /^paintings\/\d{4,6}\/painting\.json$/],
  ['plan', /^paintings\/\d{4,6}\/plan-\d{4,6}\.json$/],
  ['reading', /^paintings\/\d{4,6}\/reading-\d{4,6}\.json$/],
  ['photo', /^paintings\/\d{4,6}\/photo-\d{4,6}\.[a-z]{3,4}$/],
  ['box', /^box\.json$/],
  ['settings', /^settings\.json$/],
];

/** What a file holds; null where no copy has a file of that name. */
export const kindOfFile = (name: string): FileKind | null =>
  names.find(([, pattern]) => pattern.test(name))?.[0] ?? null;

const million = 1_000_000;
const mostFiles = 100_000;

/** The most a file may hold, bytes (own): a reading takes under 2 million, a manifest of 500 paintings under 2 million. */
export const mostBytes: Readonly<Record<FileKind | 'manifest', number>> = {
  manifest: 16 * million,
  painting: 16 * million,
  plan: 16 * million,
  reading: 16 * million,
  photo: 400 * million, // as it is, never packed: so it can't be more than the copy itself
  box: 16 * million,
  settings: million,
};

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const words = (most: number) => v.pipe(v.string(), v.maxLength(most));

const manifestSchema = v.strictObject({
  format: v.literal(backupFormat),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  /** The app it was made by. */
  app: words(200),
  /** Wall time, ms since 1970. */
  madeAt: count,
  holds: v.picklist(['everything', 'painting', 'box']),
  /** Whether the photos still say where they were taken. */
  places: v.boolean(),
  paintings: v.pipe(
    v.array(
      v.strictObject({ folder: v.pipe(v.string(), v.regex(/^\d{4,6}$/)), title: words(2000) }),
    ),
    v.maxLength(mostFiles),
  ),
  files: v.pipe(
    v.array(
      v.strictObject({
        name: words(60),
        bytes: count,
        sha256: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
      }),
    ),
    v.maxLength(mostFiles),
  ),
});

export type Manifest = v.InferOutput<typeof manifestSchema>;

/** Enough of a manifest of any version to know what it is. */
const anyManifest = v.looseObject({
  format: v.literal(backupFormat),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
});

interface ReadManifest {
  readonly manifest: Manifest;
  /** The climbs that what its files hold still has to make. */
  readonly climbs: readonly Climb[];
}

/** Reads a manifest of this or any older version. Throws a BackupProblem. */
export function readManifest(text: string, climbs: readonly Climb[] = CLIMBS): ReadManifest {
  const value = rowFromText(text);
  const found = v.safeParse(anyManifest, value);
  if (v.is(v.looseObject({ format: v.literal(remainsFormat) }), value))
    throw new BackupProblem('remains');
  if (!found.success) throw new BackupProblem('not-a-copy');
  const { version } = found.output;
  if (version > climbs.length + 1) throw new BackupProblem('newer');
  const left = climbs.slice(version - 1);
  const climbed = left.reduce<Readonly<Record<string, unknown>>>(
    (before, climb) => climb.manifest(before),
    found.output,
  );
  const manifest = checked(manifestSchema, climbed, 'manifest');
  const { files, paintings } = manifest;
  if (new Set(files.map(({ name }) => name)).size !== files.length)
    throw damagedBackup('a file is named twice');
  const folders = new Set(paintings.map(({ folder }) => folder));
  if (folders.size !== paintings.length) throw damagedBackup('a folder is named twice');
  for (const { name, bytes } of files) {
    const kind = kindOfFile(name);
    if (!kind || bytes > mostBytes[kind]) throw damagedBackup(`the file ${name} of ${bytes} bytes`);
    const folder = name.split('/')[1];
    if (folder !== undefined && !folders.has(folder)) throw damagedBackup(`the folder ${folder}`);
  }
  return { manifest, climbs: left };
}

/** A value, unchanged, that fits its schema. Throws a BackupProblem whose cause names the place. */
export function checked<T>(schema: v.GenericSchema<unknown, T>, value: unknown, what: string): T {
  const found = v.safeParse(schema, value, { abortEarly: true });
  if (found.success) return value as T; // as it was, its fields in their order: keys of plans are made from them
  const [issue] = found.issues;
  throw damagedBackup(`${what}: ${v.getDotPath(issue) ?? ''} ${issue.message}`);
}

export const fits = (schema: v.GenericSchema, value: unknown): boolean => v.is(schema, value);
