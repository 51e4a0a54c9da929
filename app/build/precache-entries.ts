import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { relative, sep } from 'node:path';
import { filesUnder } from './files-under.ts';

export interface PrecacheFile {
  /** Relative to the folder the app is served from. */
  readonly url: string;
  /** Null where the name itself changes with the content. */
  readonly revision: string | null;
  /**
   * Subresource Integrity (W3C) of the content. Some hosts answer a missing file with their front
   * page and status 200; with this the new version is then not installed and the old one stays.
   */
  readonly integrity: string;
}

/** Every file the app needs to start and work without a network: all that was built but the maps. */
export async function precacheEntries(dist: string, except: string): Promise<PrecacheFile[]> {
  const files = (await filesUnder(dist)).filter((f) => !f.endsWith('.map') && f !== except);
  return Promise.all(
    files.map(async (file) => {
      const content = await readFile(file);
      const url = relative(dist, file).split(sep).join('/');
      const named = /^assets\/.+-[\w-]{8}\.\w+$/.test(url);
      return {
        url,
        revision: named ? null : createHash('sha256').update(content).digest('hex').slice(0, 16),
        integrity: `sha256-${createHash('sha256').update(content).digest('base64')}`,
      };
    }),
  );
}
