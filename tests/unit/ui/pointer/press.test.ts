import { expect, test } from 'vitest';
import {
  broadestFingerPx,
  farthestPx,
  isHintDue,
  mayBeFinger,
} from '../../../../app/ui/pointer/press.ts';

const finger = { place: [100, 100], acrossPx: 40, touches: 1 } as const;

test('one finger held still', () => {
  expect(mayBeFinger([100, 100], finger)).toBe(true);
  expect(mayBeFinger([100, 100], { ...finger, place: [100 + farthestPx, 100] })).toBe(true);
});

test.each([
  ['two touches at once', { ...finger, touches: 2 }],
  ['the side of a hand', { ...finger, acrossPx: broadestFingerPx + 1 }],
  ['a running drop', { ...finger, place: [100, 101 + farthestPx] as const }],
])('%s is no finger', (_name, contact) => {
  expect(mayBeFinger([100, 100], contact)).toBe(false);
});

test('the hint comes with the first press let go too soon, then with every third', () => {
  expect([1, 2, 3, 4, 5, 6, 7].map(isHintDue)).toEqual([
    true,
    false,
    false,
    true,
    false,
    false,
    true,
  ]);
});
