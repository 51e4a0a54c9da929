import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Deserializer, Serializer } from 'node:v8';

// Tests run in several processes: what is dear and always comes out alike (the core keeps no state) is made by one of
// them and read by the others. It lies under test-results, which `npm test` empties first, under a hash of all it can
// follow from, so that nothing outlives a change of the source.

const top = resolve(import.meta.dirname, '../..');
const kept = join(top, 'test-results', 'made');
const followsFrom = [
  'app/core',
  'app/demo',
  'tests/support',
  'tests/fixtures',
  'package-lock.json',
];

/** Paths of the files in a folder below the project's, and below them; a file is itself. */
function filesIn(path: string): string[] {
  if (path.includes('.')) return [path];
  return readdirSync(join(top, path), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name).slice(top.length + 1))
    .sort();
}

function hashOfSource(): string {
  const hash = createHash('sha256').update(process.version);
  for (const path of followsFrom.flatMap(filesIn)) {
    hash.update(path).update(readFileSync(join(top, path)));
  }
  return hash.digest('hex').slice(0, 16);
}

let source: string | undefined;

function read<T>(file: string): T | undefined {
  try {
    const deserializer = new Deserializer(readFileSync(file));
    deserializer.readHeader();
    return deserializer.readValue() as T;
  } catch {
    return undefined; // not made yet
  }
}

/** Whole under its name or not there at all: others may be reading. */
function write(folder: string, file: string, value: unknown): void {
  const serializer = new Serializer();
  serializer.writeHeader();
  serializer.writeValue(value);
  mkdirSync(folder, { recursive: true });
  const part = `${file}.${process.pid}`;
  writeFileSync(part, serializer.releaseBuffer());
  renameSync(part, file);
  for (const other of readdirSync(kept)) {
    if (!folder.endsWith(other)) rmSync(join(kept, other), { recursive: true, force: true });
  }
}

const before = new Map<string, Promise<unknown>>();

/**
 * What `make` answers, made once for all tests of this source; shared, not to be written into. `name` says all that it
 * depends on besides the source; the answer is plain data.
 */
export function madeOnce<T>(name: string, make: () => Promise<T>): Promise<T> {
  const known = before.get(name) as Promise<T> | undefined;
  if (known) return known;
  const made = (async () => {
    source ??= hashOfSource();
    const folder = join(kept, source);
    const file = join(folder, createHash('sha256').update(name).digest('hex').slice(0, 16));
    const found = read<T>(file);
    if (found !== undefined) return found;
    const value = await make();
    write(folder, file, value);
    return value;
  })();
  before.set(name, made);
  return made;
}
