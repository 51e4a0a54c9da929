import { existsSync } from 'node:fs';
import { cp, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** What bundlers put into the output themselves, by the start of the module's name. */
const ofBundlers: readonly (readonly [start: string, name: string])[] = [
  ['\0vite/', 'vite'],
  ['\0rolldown/', 'rolldown'],
];

/** The package a bundled module comes from, '@scope/name' or 'name'; null for our own files. */
export function packageOf(moduleId: string): string | null {
  const id = moduleId.replaceAll('\\', '/');
  const [, path] = /.*\/node_modules\/(.+)$/.exec(id) ?? [];
  if (!path) return ofBundlers.find(([start]) => id.startsWith(start))?.[1] ?? null;
  const [first = '', second = ''] = path.split('/');
  return first.startsWith('@') ? `${first}/${second}` : first;
}

const licenceFile = /^(licen[cs]e|copying|notice)(\.(md|txt))?$/i;

/** Vite's own licence goes on with those of what only its own release holds. */
const ofReleaseOnly = /\n# Licenses of bundled dependencies[\s\S]*$/;

/**
 * Name, version and the licence files of a package, as they lie in its folder. Throws where it has none: then nobody
 * may be handed a copy before somebody has looked.
 */
export async function noticeOf(top: string, name: string): Promise<string> {
  const folder = join(top, 'node_modules', name);
  const { version, license } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')) as {
    version: string;
    license?: string;
  };
  const files = (await readdir(folder)).filter((file) => licenceFile.test(file)).sort();
  if (files.length === 0) throw new Error(`${name} ${version} is bundled and has no licence file`);
  const texts = await Promise.all(files.map((file) => readFile(join(folder, file), 'utf8')));
  const text = texts.map((each) => each.replace(ofReleaseOnly, '').trim()).join('\n\n');
  return `${name} ${version}${license ? ` (${license})` : ''}\n\n${text}`;
}

/** Files of ours whose words travel with every copy: the code, the tables, the picture. */
const own: readonly (readonly [title: string, path: string])[] = [
  ['Firstwash', 'LICENSE'],
  ['Tables of paints', 'app/core/paint/data/ATTRIBUTION.md'],
  ['The example', 'app/demo/ATTRIBUTION.md'],
];

const rule = `\n\n${'-'.repeat(72)}\n\n`;

export interface Licences {
  /** Notes which packages a build takes in; one for each build that goes into dist/. */
  collect(): Plugin;
  /** Writes dist/LICENSE and dist/licences.txt, once all builds are done. */
  write(dist: string): Promise<void>;
}

/** What everything bundled asks to go with copies of it. */
export function createLicences(top: string): Licences {
  const bundled = new Set<string>();
  return {
    collect: () => ({
      name: 'licences',
      apply: 'build',
      generateBundle(_, bundle) {
        for (const file of Object.values(bundle)) {
          if (file.type !== 'chunk') continue;
          for (const [id, { renderedLength }] of Object.entries(file.modules)) {
            const name = packageOf(id);
            const isFound = name && existsSync(join(top, 'node_modules', name));
            if (name && !isFound)
              throw new Error(`${name} is bundled from an unknown place: ${id}`);
            if (name && renderedLength > 0) bundled.add(name);
          }
        }
      },
    }),
    async write(dist) {
      const ours = own.map(async ([title, path]) => {
        const text = await readFile(join(top, path), 'utf8');
        return `${title}\n\n${text.trim()}`;
      });
      const theirs = [...bundled].sort().map((name) => noticeOf(top, name));
      const parts = await Promise.all([...ours, ...theirs]);
      await writeFile(join(dist, 'licences.txt'), `${parts.join(rule)}\n`);
      await cp(join(top, 'LICENSE'), join(dist, 'LICENSE'));
    },
  };
}
