import { describe, expect, test } from 'vitest';
import { sourceFiles } from './source-files.ts';

const source = /\.(ts|tsx)$/;

/** `tests/unit/core/x/y.topic.test.ts` is a test of `app/core/x/y.ts`; of workers likewise. */
function homeless(tests: readonly string[], sources: readonly string[]): string[] {
  const places = new Set(sources.map((path) => path.replace(/^app\//, '').replace(source, '')));
  return tests.filter((path) => {
    const place = path.replace(/^tests\/unit\//, '').replace(/(\.[\w-]+)?\.test\.tsx?$/, '');
    return !place.startsWith('house/') && !place.startsWith('support/') && !places.has(place);
  });
}

const pathsOf = async (folders: string[], endings: string[]): Promise<string[]> =>
  (await sourceFiles(folders, endings)).map(({ path }) => path);

describe('tests in Node', () => {
  test('lie at the path of what they test', async () => {
    const tests = await pathsOf(['tests/unit'], ['.test.ts', '.test.tsx']);
    expect(tests.length).toBeGreaterThan(100);
    expect(homeless(tests, await pathsOf(['app', 'workers'], ['.ts', '.tsx']))).toEqual([]);
  });

  test('one of no source would be seen, one of a topic of its own would not', () => {
    const tests = ['tests/unit/core/a.test.ts', 'tests/unit/core/a.topic.test.ts'];
    expect(homeless([...tests, 'tests/unit/core/b.test.ts'], ['app/core/a.ts'])).toEqual([
      'tests/unit/core/b.test.ts',
    ]);
  });

  test('share what they make in tests/support', async () => {
    const made = await pathsOf(['tests/unit'], ['.ts', '.tsx']);
    expect(made.filter((path) => !/\/house\/|\.test\.tsx?$/.test(path))).toEqual([]);
  });
});
