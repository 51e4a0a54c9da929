import { posix } from 'node:path';
import type { SourceFile } from './source-files.ts';
import { withoutComments } from './without-comments.ts';

export interface ImportLine {
  /** A path from the top of the project, or a package's name. */
  readonly target: string;
  readonly isPackage: boolean;
  /** Started as a worker or linked as a file by `new URL(…, import.meta.url)`, not imported. */
  readonly isAddress: boolean;
}

const statement = /(?:^|[;\n}])\s*(?:import|export)\b(?:[\w\s{},*$]*?\bfrom)?\s*['"]([^'"]+)['"]/g;
const call = /\bimport\(\s*['"]([^'"]+)['"]/g;
const address = /new URL\(\s*['"]([^'"]+)['"],\s*import\.meta\.url/g;

/** What a file imports, re-exports, loads late or links, in the order of these kinds. */
export function importLines({ path, text }: SourceFile): ImportLine[] {
  const code = withoutComments(text);
  const found = (pattern: RegExp, isAddress: boolean): ImportLine[] =>
    [...code.matchAll(pattern)].map(([, name = '']) => {
      const isPackage = !name.startsWith('.') && !isAddress;
      const target = isPackage ? name : posix.join(posix.dirname(path), name.split('?')[0] ?? name);
      return { target, isPackage, isAddress };
    });
  return [...found(statement, false), ...found(call, false), ...found(address, true)];
}
