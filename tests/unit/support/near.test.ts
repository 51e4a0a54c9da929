import { expect, test } from 'vitest';
import { importsOf, nearTests } from '../../support/near.mjs';

const imports = new Map([
  ['app/leaf.ts', []],
  ['app/branch.ts', ['app/leaf.ts']],
  ['app/tree.ts', ['app/branch.ts']],
  ['tests/unit/leaf.test.ts', []],
  ['tests/unit/branch.test.ts', ['app/branch.ts']],
  ['tests/unit/tree.test.ts', ['app/tree.ts']],
  ['tests/unit/season.test.ts', ['app/leaf.ts', 'tests/unit/weather.ts']],
  ['tests/unit/weather.ts', []],
]);

test.each([
  [
    'its own test, tests that import it, and those of what imports it',
    ['app/leaf.ts'],
    ['branch', 'leaf', 'season'],
  ],
  ['nothing farther off', ['app/tree.ts'], ['tree']],
  ['a test that was changed itself', ['tests/unit/tree.test.ts'], ['tree']],
  ['tests by what they share', ['tests/unit/weather.ts'], ['season']],
  ['nothing for what no test is near', ['README.md'], []],
])('%s', (_name, changed, names) => {
  expect(nearTests(changed, imports)).toEqual(names.map((name) => `tests/unit/${name}.test.ts`));
});

test('this very test is near to the file it tests', () => {
  const found = nearTests(['tests/unit/support/near.test.ts'], importsOf());
  expect(found).toEqual(['tests/unit/support/near.test.ts']);
  const own = importsOf().get('tests/unit/support/near.test.ts');
  expect(own).toEqual(['tests/support/near.mjs']);
});
