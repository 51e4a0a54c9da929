import { importLines } from './import-lines.ts';
import type { SourceFile } from './source-files.ts';

/** Groups of files that import each other in a loop, types included (Tarjan's strong components, 1972). */
export function importCircles(files: readonly SourceFile[]): string[][] {
  const targets = new Map(
    files.map((file) => [
      file.path,
      importLines(file)
        .filter(({ isAddress }) => !isAddress)
        .map(({ target }) => target),
    ]),
  );
  const index = new Map<string, number>();
  const open: string[] = [];
  const circles: string[][] = [];
  const visit = (path: string): number => {
    const own = index.size;
    let low = own;
    index.set(path, own);
    open.push(path);
    for (const target of targets.get(path) ?? []) {
      if (!targets.has(target)) continue;
      if (!index.has(target)) low = Math.min(low, visit(target));
      else if (open.includes(target)) low = Math.min(low, index.get(target) ?? own);
    }
    if (low === own) {
      const members = open.splice(open.indexOf(path));
      if (members.length > 1) circles.push(members.sort());
    }
    return low;
  };
  for (const path of targets.keys()) if (!index.has(path)) visit(path);
  return circles;
}
