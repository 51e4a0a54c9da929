import { join } from 'node:path';
import { build, type Plugin } from 'vite';
import { precacheEntries } from './precache-entries.ts';

const fileName = 'service-worker.js';

/**
 * Builds workers/service.worker.ts as one classic script, with the list of all built files in it.
 * Last of all, as the list is read from what lies in dist/.
 */
export function serviceWorker(top: string, dist: string): Plugin {
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
        const entries = await precacheEntries(dist, join(dist, fileName));
        await build({
          configFile: false,
          root: top,
          logLevel: 'warn',
          publicDir: false,
          mode: 'production',
          define: { 'self.__WB_MANIFEST': JSON.stringify(entries) },
          build: {
            outDir: dist,
            emptyOutDir: false,
            copyPublicDir: false,
            target: 'es2022',
            rolldownOptions: {
              input: join(top, 'workers/service.worker.ts'),
              output: { format: 'iife', entryFileNames: fileName, codeSplitting: false },
            },
          },
        });
      },
    },
  };
}
