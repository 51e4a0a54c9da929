import fc from 'fast-check';
import { expect, test } from 'vitest';
import { amountsIn, consistencyIn } from '../../../../app/core/paint/former-amounts.ts';
import { wholeParts } from '../../../../app/core/paint/mix.ts';

const paints = [
  { id: 'weak', strength: 0.5 },
  { id: 'plain', strength: 1 },
  { id: 'strong', strength: 2 },
  { id: 'stain', strength: 40 },
];
const mixed = (load: number, ...parts: [paint: string, parts: number][]) => ({
  parts: parts.map(([paint, n]) => ({ paint, parts: n })),
  load,
});

test('what was mixed by loads is told in volumes, as strong as before', () => {
  // Worked by hand: equal loads of a strong and a weak paint are 1 ml to 4 ml; 5 ml of it are 4 loads.
  expect(amountsIn('ml', mixed(4, ['strong', 1], ['weak', 1]), paints)).toEqual(
    mixed(5, ['strong', 1], ['weak', 4]),
  );
  // Two loads to one are 2 ml to 2 ml: one part each; 3 loads are 4 ml.
  expect(amountsIn('ml', mixed(3, ['plain', 2], ['weak', 1]), paints)).toEqual(
    mixed(4, ['plain', 1], ['weak', 1]),
  );
  expect(amountsIn('ml', mixed(3, ['weak', 7]), paints)).toEqual(mixed(6, ['weak', 1]));
});

test('no further than can be squeezed out and laid', () => {
  expect(amountsIn('ml', mixed(1, ['stain', 1], ['weak', 1]), paints)?.parts).toEqual(
    mixed(1, ['stain', 1], ['weak', 6]).parts,
  );
  expect(amountsIn('ml', mixed(32, ['weak', 1]), paints)?.load).toBe(40);
});

test('of all whole parts none comes nearer in colour shares; the load is kept (slow way)', () => {
  const parts = fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 2, maxLength: 3 });
  fc.assert(
    fc.property(parts, fc.double({ min: 0.1, max: 6, noNaN: true }), (counts, load) => {
      const used = paints.slice(0, counts.length);
      const before = {
        parts: used.map(({ id }, i) => ({ paint: id, parts: counts[i] ?? 0 })),
        load,
      };
      const found = amountsIn('ml', before, paints);
      const shares = (volumes: readonly number[]): number[] => {
        const loads = volumes.map((volume, i) => volume * (used[i]?.strength ?? 0));
        return loads.map((one) => one / loads.reduce((all, each) => all + each));
      };
      const sum = counts.reduce((all, one) => all + one);
      const miss = (volumes: readonly number[]): number =>
        shares(volumes).reduce((all, share, i) => all + (share - (counts[i] ?? 0) / sum) ** 2, 0);
      const volumes = (found?.parts ?? []).map((part) => part.parts);
      for (const other of wholeParts(counts.length)) {
        expect(miss(volumes)).toBeLessThanOrEqual(miss(other) + 1e-12);
      }
      const volume = volumes.reduce((all, one) => all + one);
      const loads = volumes.map((one, i) => (one / volume) * (used[i]?.strength ?? 0));
      const laid = (found?.load ?? 0) * loads.reduce((all, one) => all + one);
      expect(laid).toBeCloseTo(load, 9);
    }),
  );
});

test('in the unit it was made in it stays as it is; so does what names a paint that is gone', () => {
  const own = { ...mixed(3, ['strong', 2], ['weak', 1]), unit: 'ml' } as const;
  expect(amountsIn('ml', own, paints)).toEqual(mixed(3, ['strong', 2], ['weak', 1]));
  const former = mixed(3, ['strong', 2], ['weak', 1]);
  expect(amountsIn(undefined, former, paints)).toEqual(former);
  expect(amountsIn(undefined, own, paints)).toBeNull();
  const gone = mixed(3, ['strong', 2], ['gone', 1]);
  expect(amountsIn('ml', gone, paints)).toEqual(gone);
});

test('a load keeps the word of its time', () => {
  expect([0.5, 1, 3, 10, 20].map((load) => consistencyIn(undefined, load))).toEqual([
    'tea',
    'coffee',
    'milk',
    'cream',
    'butter',
  ]);
  expect(consistencyIn('ml', 10)).toBe('cream');
  expect(consistencyIn('ml', 3)).toBe('coffee');
});
