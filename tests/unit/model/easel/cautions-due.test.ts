import { expect, test } from 'vitest';
import { cautionsDue } from '../../../../app/model/session/cautions-due.ts';

const dryer = 'Hair dryer only once the shine has gone, away from the water jar and wet hands.';
const mask = 'Masking fluid holds latex and ammonia: open a window.';
const steps = [
  { cautions: [], mixes: [] },
  { cautions: ['Cobalt blue: contains cobalt. Check the label.'], mixes: ['a'] },
  { cautions: [mask], mixes: [] },
  { cautions: [], mixes: ['a', 'b'] },
  { cautions: [dryer], mixes: [] },
  { cautions: [], mixes: ['b'] },
  { cautions: [dryer, mask], mixes: [] },
];
const all = steps.map((_, index) => cautionsDue(steps, index));

test('each is said once in a session, where it is first due', () => {
  expect(all[4]).toEqual([dryer]);
  expect(all[6]).toEqual([]);
  const said = all.flat();
  expect(new Set(said).size).toBe(said.length);
});

test('lips are warned of with the first paint only', () => {
  expect(all[1]?.[0]).toMatch(/lips.*label/);
  expect(all.flat().filter((caution) => /lips/.test(caution))).toHaveLength(1);
});

test('masking fluid ends at its label; a paint that names it already is left as it is', () => {
  expect(all[2]).toEqual([`${mask} Read the label.`]);
  expect(all[1]?.[1]).toBe('Cobalt blue: contains cobalt. Check the label.');
});

test('past the last step nothing is said', () => {
  expect(cautionsDue(steps, 99)).toEqual([]);
});
