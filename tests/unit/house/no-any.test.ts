import { describe, expect, test } from 'vitest';
import { matchingLines } from './matching-lines.ts';
import { type SourceFile, sourceFiles } from './source-files.ts';

/** The word may stand in any text; what is quoted on one line is taken out first. */
const unquoted = (file: SourceFile) => ({
  ...file,
  text: file.text.replace(/'[^'\n]*'|"[^"\n]*"/g, "''"),
});

const anyType = [/[:<|&,(=]\s*any\b(?!\s*[:(.'"])/, /\bas\s+any\b/, /\bany\[\]/];
// In comments, so looked for in the raw text.
const silenced = /@ts-(ignore|nocheck|expect-error)|biome-ignore\s+lint\/suspicious\/noExplicitAny/;

describe('types are told', () => {
  test('no `any` in app/, workers/ and tests/', async () => {
    const files = await sourceFiles(['app', 'workers', 'tests'], ['.ts', '.tsx']);
    const own = files.filter(({ path }) => path !== 'tests/unit/house/no-any.test.ts');
    expect(matchingLines(own.map(unquoted), anyType)).toEqual([]);
    expect(own.filter(({ text }) => silenced.test(text)).map(({ path }) => path)).toEqual([]);
  });

  test.each([
    'const a: any = 1;',
    'function f(a: any, b: string) {}',
    'const m = new Map<string, any>();',
    '(window as any).acked(n);',
    'type T = string | any;',
    'let list: any[] = [];',
  ])('%s would be seen', (text) => {
    expect(matchingLines([{ path: 'app/x.ts', text }], anyType)).toHaveLength(1);
  });

  test.each(['// @ts-ignore', '// biome-ignore lint/suspicious/noExplicitAny: just so'])(
    '%s would be seen',
    (text) => expect(silenced.test(text)).toBe(true),
  );

  test('the word any in a sentence or a name is none', () => {
    const file = { path: 'app/x.ts', text: "const a = ['at any time', 'way: any'];\nlist.any(x);" };
    expect(matchingLines([unquoted(file)], anyType)).toEqual([]);
  });
});
