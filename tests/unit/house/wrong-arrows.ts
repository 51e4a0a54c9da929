import { importLines } from './import-lines.ts';
import { layerOf } from './layers.ts';
import type { SourceFile } from './source-files.ts';

// The worker is started by its address, never imported.
const workerEntry = /^workers\/[\w-]+\.worker\.ts$/;

/** Every import that leads against the arrows, as a sentence. */
export function wrongArrows(files: readonly SourceFile[]): string[] {
  return files.flatMap((file) => {
    const from = layerOf(file.path);
    if (!from) return [`${file.path} lies in no known layer`];
    return importLines(file).flatMap(({ target, isPackage, isAddress }) => {
      const said = `${file.path} (${from.name}) -> ${target}`;
      if (isPackage) return from.packages.test(target) ? [] : [said];
      if (isAddress && from.name === 'client' && workerEntry.test(target)) return [];
      if (isAddress && from.name === 'tools') return []; // reads its data and folders from disk
      const to = layerOf(target);
      if (!to) return target === 'package.json' ? [] : [said];
      return to === from || from.mayUse.includes(to.name) ? [] : [said];
    });
  });
}
