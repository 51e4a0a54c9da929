import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';

const folder = 'test-results/kept';

/** The bytes of all modules of some folders, their names with them, as one short hash. */
function hashOf(roots: readonly string[]): string {
  const hash = createHash('sha256');
  for (const root of roots)
    for (const file of readdirSync(root, { recursive: true, encoding: 'utf8' }).sort())
      if (/\.(ts|json)$/.test(file)) hash.update(file).update(readFileSync(join(root, file)));
  return hash.digest('hex').slice(0, 16);
}

/**
 * What is slow to make and the same every time, kept from run to run: made anew once a module of the folders it was
 * made with has changed. Plain data and typed arrays only.
 */
export async function keptResult<T>(
  name: string,
  madeWith: readonly string[],
  make: () => Promise<T>,
): Promise<T> {
  const file = join(folder, `${name}-${hashOf(madeWith)}.bin`);
  if (existsSync(file)) return deserialize(readFileSync(file)) as T;
  const made = await make();
  mkdirSync(folder, { recursive: true });
  // Whole or not at all: another run may read at the same time.
  writeFileSync(`${file}.part${process.pid}`, serialize(made));
  renameSync(`${file}.part${process.pid}`, file);
  return made;
}
