import { describe, expect, test } from 'vitest';
import { importLines } from './import-lines.ts';
import { type SourceFile, sourceFiles } from './source-files.ts';

/** A file of its own is longer than this, or is asked for by two others, or has a test of its own. */
const longEnough = 80;

/** Started by a tool, a browser or the build, or read by the compiler alone: not imported. */
const entries =
  /^app\/(main\.tsx|vite\.config\.ts|build\/.*|tools\/.*)$|^workers\/[\w-]+\.worker\.ts$|\.d\.ts$/;

const lineCount = ({ text }: SourceFile): number => text.trimEnd().split('\n').length;

/** Files that would be read more easily as part of their one importer. */
function onlyChildren(sources: readonly SourceFile[], tests: readonly SourceFile[]): string[] {
  const importers = new Map<string, Set<string>>();
  for (const file of sources) {
    for (const { target } of importLines(file)) {
      importers.set(target, (importers.get(target) ?? new Set()).add(file.path));
    }
  }
  const tested = new Set(tests.flatMap((file) => importLines(file).map(({ target }) => target)));
  return sources
    .filter((file) => !entries.test(file.path) && lineCount(file) < longEnough)
    .filter(({ path }) => (importers.get(path)?.size ?? 0) < 2 && !tested.has(path))
    .map((file) => `${file.path}: ${lineCount(file)}`);
}

describe('a file is an idea with its private parts', () => {
  test('short ones have two importers or a test', async () => {
    const sources = await sourceFiles(['app', 'workers'], ['.ts', '.tsx']);
    const tests = await sourceFiles(['tests'], ['.test.ts', '.test.tsx', '.spec.ts']);
    expect(onlyChildren(sources, tests)).toEqual([]);
  });

  test('a short one with one importer and no test would be seen', () => {
    const file = (path: string, text: string): SourceFile => ({ path, text });
    const sources = [
      file('app/a.ts', "import './b.ts';\nimport './c.ts';\n"),
      file('app/b.ts', "import './c.ts';\n"),
      file('app/c.ts', 'c();\n'),
    ];
    const ofA = file('tests/unit/a.test.ts', "import '../../app/a.ts';\n");
    expect(onlyChildren(sources, [ofA])).toEqual(['app/b.ts: 1']);
  });
});
