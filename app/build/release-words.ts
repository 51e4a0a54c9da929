import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { filesUnder } from './files-under.ts';

const folders = ['app', 'icons', 'workers'];
const files = ['manifest.webmanifest', 'package-lock.json', '.github/CHANGELOG.md'];

/**
 * '0.1.0+3f9a2c1': the version, and a hash of all that a build is made of. The same files have the same name on every
 * machine, so that nobody is offered a new version that is none; anything changed has another.
 */
export async function buildName(top: string, version: string): Promise<string> {
  const found = (await Promise.all(folders.map((folder) => filesUnder(join(top, folder))))).flat();
  const hash = createHash('sha256');
  for (const file of [...found, ...files.map((name) => join(top, name))]) {
    hash.update(`${relative(top, file).split(sep).join('/')}\0`);
    hash.update(await readFile(file));
  }
  return `${version}+${hash.digest('hex').slice(0, 7)}`;
}

/**
 * The newest part of a list of changes in Markdown: what its first second-level heading is called, and the sentences
 * listed under it. Throws where there is none.
 */
export function newestChanges(changelog: string): { version: string; changes: string[] } {
  const [, part] = changelog.split(/^## /m);
  if (!part) throw new Error('The list of changes has no heading of a version');
  const [heading = '', ...lines] = part.split('\n');
  const changes: string[] = [];
  for (const line of lines) {
    if (line.startsWith('- ')) changes.push(line.slice(2).trim());
    else if (/^\s+\S/.test(line) && changes.length) changes.push(`${changes.pop()} ${line.trim()}`);
  }
  return { version: heading.trim().split(' ')[0] ?? '', changes };
}
