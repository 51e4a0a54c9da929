import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { build, type Plugin } from 'vite';
import { filesUnder } from './files-under.ts';
import type { Licences } from './licences.ts';

interface PrecacheFile {
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

/** Maps, and pictures that only a shop window shows, are no part of the app. */
const isLeftOut = (file: string, dist: string): boolean =>
  file.endsWith('.map') || relative(dist, file).startsWith(join('icons', 'screenshots'));

/** Every file the app needs to start and work without a network: all that was built, with few exceptions. */
async function precacheEntries(dist: string, except: string): Promise<PrecacheFile[]> {
  const files = (await filesUnder(dist)).filter((f) => !isLeftOut(f, dist) && f !== except);
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

const fileName = 'service-worker.js';
/** Where the list of files goes: workers/service.worker.ts reads it there. */
const listName = 'self.__WB_MANIFEST';

/**
 * Builds workers/service.worker.ts as one classic script, then writes the licences, then puts the list of all built
 * files into the script: last of all, as the list is read from what lies in dist/.
 */
export function serviceWorker(top: string, dist: string, licences: Licences): Plugin {
  let written = false;
  return {
    name: 'service-worker',
    apply: 'build',
    writeBundle() {
      written = true;
    },
    closeBundle: {
      sequential: true,
      order: 'post',
      async handler() {
        if (!written) return; // the build failed, and says so itself
        const built = await build({
          configFile: false,
          root: top,
          logLevel: 'warn',
          publicDir: false,
          mode: 'production',
          plugins: [licences.collect()],
          build: {
            write: false,
            target: 'es2022',
            sourcemap: true,
            rolldownOptions: {
              input: join(top, 'workers/service.worker.ts'),
              output: { format: 'iife', entryFileNames: fileName, codeSplitting: false },
            },
          },
        });
        await licences.write(dist);
        const list = JSON.stringify(await precacheEntries(dist, join(dist, fileName)));
        for (const file of 'output' in built ? built.output : []) {
          const content = file.type === 'chunk' ? withList(file.code, list) : file.source;
          await writeFile(join(dist, file.fileName), content);
        }
      },
    },
  };
}

function withList(code: string, list: string): string {
  const parts = code.split(listName);
  if (parts.length !== 2) throw new Error(`${listName} stands ${parts.length - 1} times`);
  return parts.join(list);
}
