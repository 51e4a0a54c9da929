import { expect, test } from 'vitest';
import { sourceFiles } from './source-files.ts';
import { codes, otherStrings, writtenSentences } from './written-sentences.ts';

test('no sentence is written in the core but in its words', async () => {
  const core = await sourceFiles(['app/core'], ['.ts']);
  const files = core.filter(({ path }) => !path.startsWith('app/core/words/'));
  expect(files.length).toBeGreaterThan(250);
  expect(files.flatMap(writtenSentences)).toEqual([]);
  // No exemption stays longer than it is needed.
  const isNeeded = (code: string): boolean => files.some(({ text }) => text.includes(code));
  expect([...codes].filter((code) => !code.includes('…') && !isNeeded(code))).toEqual([]);
  expect([...otherStrings].filter((each) => !files.some(({ path }) => path === each))).toEqual([]);
});

const found = (text: string) =>
  writtenSentences({ path: 'x.ts', text }).map((sentence) => sentence.replace('x.ts: ', ''));

test.each([
  ["const prompt = 'Let it dry.';", 'Let it dry.'],
  ["const step = { title: 'Last look' };", 'Last look'],
  [`const said = \`Mix the \${puddles}\`;`, 'Mix the …'],
  [`const said = \`\${name} wash\`;`, '… wash'],
  ["const said = wet ? 'flat: drops run' : '';", 'flat: drops run'],
  ["const said = join(names, ' and then ');", ' and then '],
  ["throw 'The sheet is wet';", 'The sheet is wet'],
])('%s would be seen', (text, sentence) => expect(found(text)).toEqual([sentence]));

test.each([
  "const technique: Technique = 'wet on dry';",
  "type Change = 'third go' | 'all at once';",
  "const said = { say: 'title/dry' };",
  `const key = \`\${kind}/\${passage}/\${wash}\`;`,
  "throw new RangeError('A mix names a paint that is not there');",
  "broken('R1', mask, 'masked after a wash', { say: 'mask/late' });",
  "const fault = ['R5', 'lifting on dry paper'];",
  "import { words } from './a b.ts';",
])('%s is none', (text) => expect(found(text)).toEqual([]));
