import {
  BlobReader,
  configure,
  type FileEntry,
  ZipReader,
} from '@zip.js/zip.js/lib/zip-core-custom.js';
import { sha256 } from '../sha256.ts';
import { BackupProblem, damagedBackup } from './backup-problem.ts';
import {
  type Climb,
  type FileKind,
  kindOfFile,
  type Manifest,
  manifestName,
  mostBytes,
  readManifest,
} from './manifest.ts';
import { rowFromText } from './plain-text.ts';

/** A copy whose manifest has been read. Its other files are checked each time they are read. */
export interface OpenBackup {
  readonly manifest: Manifest;
  /** The bytes of a file by its name; checked against the manifest. */
  bytes(signal: AbortSignal, name: string): Promise<Uint8Array<ArrayBuffer>>;
  /** What a file of JSON holds, as today's version has it. */
  row(signal: AbortSignal, name: string): Promise<unknown>;
}

/** More than any text of ours is packed: what claims more is made to fill up a device (own; ours reach about 20). */
const mostPacking = 300;
/** Smaller ones can't fill up anything, bytes. */
const smallBytes = 100_000;

/**
 * Opens a copy. Nothing of it is believed: neither names nor sizes, neither how many files it has nor what it says
 * of itself. Rejects with a BackupProblem. The file is read where it lies, so that little of it is ever in memory.
 */
export async function openBackup(
  signal: AbortSignal,
  file: Blob,
  climbs?: readonly Climb[],
): Promise<OpenBackup> {
  configure({ useWebWorkers: false });
  const entries = await entriesOf(signal, file);
  const head = entries.get(manifestName);
  if (!head) throw new BackupProblem('not-a-copy');
  const text = decode(await unpack(signal, head, mostBytes.manifest));
  const { manifest, climbs: left } = readManifest(text, climbs);
  const told = new Map(manifest.files.map((each) => [each.name, each]));
  if (told.size !== entries.size - 1) throw damagedBackup('other files than the manifest names');
  for (const { name, bytes } of manifest.files)
    if (entries.get(name)?.uncompressedSize !== bytes)
      throw damagedBackup(`${name} is not as large as the manifest says`);

  async function bytes(signal: AbortSignal, name: string): Promise<Uint8Array<ArrayBuffer>> {
    const entry = entries.get(name);
    const facts = told.get(name);
    if (!entry || !facts) throw damagedBackup(`${name} is not there`);
    const found = await unpack(signal, entry, facts.bytes);
    if ((await sha256(found)) !== facts.sha256) throw damagedBackup(`${name} has changed`);
    return found;
  }

  return {
    manifest,
    bytes,
    async row(signal, name) {
      const kind = kindOfFile(name);
      if (!kind || kind === 'photo') throw damagedBackup(`${name} holds no row`);
      const row = rowFromText(decode(await bytes(signal, name)));
      return left.reduce((before, climb) => climb.file(kind, before), row);
    },
  };
}

const directoryLimit = 100_002;

async function entriesOf(signal: AbortSignal, file: Blob): Promise<Map<string, FileEntry>> {
  const found = new Map<string, FileEntry>();
  let first: Uint8Array;
  try {
    first = new Uint8Array(await file.slice(0, 4).arrayBuffer());
  } catch (fault) {
    throw new BackupProblem('unread', fault);
  }
  // 'PK' and 3, 4: a first file (PKWARE APPNOTE 4.3.7)
  if (first[0] !== 0x50 || first[1] !== 0x4b) throw new BackupProblem('not-a-copy');
  await sparing(async () => {
    const zip = new ZipReader(new BlobReader(file), {
      strictness: 'strict',
      checkOverlappingEntry: true,
      checkSignature: true,
    });
    for await (const entry of zip.getEntriesGenerator()) {
      signal.throwIfAborted();
      if (entry.directory || entry.encrypted) throw damagedBackup('a folder, or encrypted');
      if (found.has(entry.filename) || found.size >= directoryLimit)
        throw damagedBackup('too many files, or one twice');
      refuseSize(entry);
      found.set(entry.filename, entry);
    }
  });
  return found;
}

/** What is packed is text, and never much more than it should be; a photo lies there as it is. */
function refuseSize({ filename, compressionMethod, uncompressedSize, compressedSize }: FileEntry) {
  const kind: FileKind | 'manifest' | null =
    filename === manifestName ? 'manifest' : kindOfFile(filename);
  if (!kind) throw damagedBackup('a file of a name no copy has');
  if (uncompressedSize > mostBytes[kind]) throw damagedBackup(`${filename} is too large`);
  const asItIs = compressionMethod === 0 && uncompressedSize === compressedSize;
  const packed = compressionMethod === 8 && kind !== 'photo';
  if (!asItIs && !packed) throw damagedBackup(`${filename} is packed in another way`);
  if (packed && uncompressedSize > Math.max(smallBytes, mostPacking * compressedSize))
    throw damagedBackup(`${filename} is packed too small`);
}

/** Unpacks a file of exactly the size its entry tells: it is left as soon as it turns out to be larger. */
async function unpack(
  signal: AbortSignal,
  entry: FileEntry,
  most: number,
): Promise<Uint8Array<ArrayBuffer>> {
  if (entry.uncompressedSize > most) throw damagedBackup(`${entry.filename} is too large`);
  const bytes = new Uint8Array(entry.uncompressedSize);
  let filled = 0;
  await sparing(() =>
    entry.getData(
      new WritableStream<Uint8Array>({
        write(chunk) {
          if (filled + chunk.length > bytes.length) throw damagedBackup('larger than it says');
          bytes.set(chunk, filled);
          filled += chunk.length;
        },
      }),
      { signal, checkSignature: true },
    ),
  );
  if (filled !== bytes.length) throw damagedBackup(`${entry.filename} is cut short`);
  return bytes;
}

/** Any fault of the library as ours, but that she has stopped it. */
async function sparing<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (fault) {
    if (fault instanceof BackupProblem) throw fault;
    if (fault instanceof DOMException && fault.name === 'AbortError') throw fault;
    if (fault instanceof DOMException && fault.name === 'NotReadableError')
      throw new BackupProblem('unread', fault);
    throw new BackupProblem('damaged', fault);
  }
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (fault) {
    throw new BackupProblem('damaged', fault);
  }
}
