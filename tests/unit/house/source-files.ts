import { readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { filesUnder } from '../../../app/build/files-under.ts';

export const top = join(import.meta.dirname, '..', '..', '..');

export interface SourceFile {
  /** From the top of the project, with slashes. */
  readonly path: string;
  readonly text: string;
}

/** The files below some top-level folders whose names end in one of the given ways. */
export async function sourceFiles(folders: string[], endings: string[]): Promise<SourceFile[]> {
  const found = await Promise.all(folders.map((folder) => filesUnder(join(top, folder))));
  return found
    .flat()
    .filter((file) => endings.some((ending) => file.endsWith(ending)))
    .map((file) => ({
      path: relative(top, file).split(sep).join('/'),
      text: readFileSync(file, 'utf8'),
    }));
}
