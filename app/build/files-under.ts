import { readdir } from 'node:fs/promises';
import { join } from 'node:path';

/** All files below a folder, as full paths, in a fixed order. */
export async function filesUnder(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true, recursive: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}
