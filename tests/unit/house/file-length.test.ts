import { expect, test } from 'vitest';
import { type SourceFile, sourceFiles } from './source-files.ts';

const hardStop = 300;
const endings = ['.ts', '.tsx', '.mjs', '.css', '.html'];

const lineCount = ({ text }: SourceFile) => text.trimEnd().split('\n').length;
const tooLong = (files: readonly SourceFile[]) =>
  files
    .filter((file) => lineCount(file) > hardStop)
    .map((file) => `${file.path}: ${lineCount(file)}`);

test(`no file is over ${hardStop} lines`, async () => {
  expect(tooLong(await sourceFiles(['app', 'workers', 'tests'], endings))).toEqual([]);
});

test('a file of 301 lines would be seen', () => {
  const file = (lines: number) => ({ path: 'app/x.ts', text: 'a\n'.repeat(lines) });
  expect(tooLong([file(300)])).toEqual([]);
  expect(tooLong([file(301)])).toEqual(['app/x.ts: 301']);
});
