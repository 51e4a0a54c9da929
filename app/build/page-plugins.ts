import { createReadStream, existsSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import { extname, join } from 'node:path';
import type { Plugin } from 'vite';

const policy = /\s*<meta\s+http-equiv="Content-Security-Policy"[^>]*>/;

/**
 * Vite's development server puts styles and its own script into the page, which the page's
 * Content-Security-Policy forbids: there, and only there, the policy is taken out.
 */
export function openPolicy(): Plugin {
  return {
    name: 'open-policy',
    apply: 'serve',
    transformIndexHtml: { order: 'pre', handler: (html) => html.replace(policy, '') },
  };
}

const types: Record<string, string> = {
  '.webmanifest': 'application/manifest+json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.jpg': 'image/jpeg',
};

/**
 * icons/ and manifest.webmanifest lie at the top of the project, beside app/: served in development,
 * copied by the build. index.html links them as ./icons/… and ./manifest.webmanifest: no such file is
 * in app/, so Vite leaves the links alone and they stay relative.
 */
export function topFiles(top: string, dist: string): Plugin {
  return {
    name: 'top-files',
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        const path = decodeURIComponent((request.url ?? '').split('?')[0] ?? '');
        const ours = path === '/manifest.webmanifest' || /^\/icons(\/[\w.-]+){1,2}$/.test(path);
        const file = join(top, path);
        if (!ours || !existsSync(file)) return next();
        response.setHeader('Content-Type', types[extname(file)] ?? 'application/octet-stream');
        createReadStream(file).pipe(response);
      });
    },
    async writeBundle() {
      await cp(join(top, 'icons'), join(dist, 'icons'), { recursive: true });
      await cp(join(top, 'manifest.webmanifest'), join(dist, 'manifest.webmanifest'));
    },
  };
}
