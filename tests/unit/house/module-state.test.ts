import { expect, test } from 'vitest';
import { moduleState } from './module-state.ts';
import { sourceFiles } from './source-files.ts';

test('no module of the core keeps anything between two calls', async () => {
  const files = await sourceFiles(['app/core'], ['.ts']);
  expect(files.length).toBeGreaterThan(100);
  expect(files.flatMap(moduleState)).toEqual([]);
});

const faultsOf = (text: string) =>
  moduleState({ path: 'x.ts', text }).map((fault) => fault.replace('x.ts: ', ''));

test.each([
  ['let kept: string | undefined;', 'let kept'],
  ['export let count = 0;', 'let count'],
  ['const known = new Map<string, number>();', 'new Map'],
  ['const made = new WeakMap();', 'new WeakMap'],
  ['const tables = { first: { made: new Set([1]) } } as const;', 'new Set'],
  ['const sheet = new Float64Array(36);', 'new Float64Array'],
  ['export const look = new Look();', 'new Look'],
  ['const rowsOf = memoizeByObject((paint: Paint) => [paint]);', 'memoizeByObject()'],
  ['export const memory = createPlanMemory();', 'createPlanMemory()'],
  ['class Paper { static kept = new Map(); }', 'new Map'],
  ['const next = (() => { const kept = new Map(); return () => kept; })();', 'new Map'],
  ['const look = { cost: 0 };\nfunction judge() { look.cost = 1; }', 'changes look'],
  [
    "import { look } from './y.ts';\nexport const judge = () => { look.cost += 1; };",
    'changes look',
  ],
  [
    'const list: number[] = [];\nexport const add = (n: number) => { list.push(n); };',
    'changes list',
  ],
  ['const rows = [3, 1];\nexport const sorted = () => rows.sort();', 'changes rows'],
  ['const table = [0];\nclass A { write() { (table as number[])[0]++; } }', 'changes table'],
  ['const at = {};\nfunction merge(more: object) { Object.assign(at, more); }', 'changes at'],
  ['function ask() { ask.times = 1; }', 'changes ask'],
])('%s would be seen', (text, fault) => {
  expect(faultsOf(text)).toEqual([fault]);
});

test.each([
  "const paints: ReadonlySet<string> = new Set(['a']);",
  'const names: ReadonlyMap<string, string> = new Map([[a, b]]);',
  'const limits = { least: 1, most: 2 } as const;',
  "const plurals = new Intl.PluralRules('en');",
  'const table = Float64Array.from({ length: 3 }, (_, i) => i);',
  'export class Memo { readonly #known = new Map<string, number>(); }',
  'export const createMemo = () => new Map();',
  'const look = { cost: 0 };\nfunction judge(look: Look) { look.cost = 1; }',
  'const sums = 1;\nfunction add() { const sums = [0]; sums[0] = 1; for (const each of sums) sums.push(each); }',
  'const rows = [3, 1];\nexport const sorted = () => [...rows].sort();',
])('%s is no state', (text) => {
  expect(faultsOf(text)).toEqual([]);
});
