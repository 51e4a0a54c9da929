import { expect, it } from 'vitest';
import { searchShares } from '../../../../../app/core/limits.ts';
import { colourOfWashes } from '../../../../../app/core/paint/colour-of-washes.ts';
import { mixSpectra } from '../../../../../app/core/paint/layer.ts';
import { wholeParts } from '../../../../../app/core/paint/mix.ts';
import { MixSensitivity } from '../../../../../app/core/paint/mix-sensitivity.ts';
import { coatOf } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { GroupMixer, labSteps } from '../../../../../app/core/palette/library/group-mixer.ts';

it('lists each way to mix once, that can be squeezed out: 1, 19 and 52', () => {
  // The slow way: every count of every paint; in lowest terms where no smaller mix has the same shares.
  const slow = (count: number): string[] => {
    const counts = Array.from({ length: 8 ** count }, (_, n) =>
      Array.from({ length: count }, (_, i) => (Math.floor(n / 8 ** i) % 8) + 1),
    );
    const fits = counts.filter(
      (parts) =>
        parts.reduce((sum, part) => sum + part) <= 8 &&
        Math.max(...parts) <= 6 * Math.min(...parts),
    );
    return fits
      .filter((parts) => [2, 3, 4, 5, 6, 7, 8].every((d) => parts.some((part) => part % d !== 0)))
      .map((parts) => parts.join())
      .sort();
  };
  expect([1, 2, 3].map((count) => slow(count).length)).toEqual([1, 19, 52]);
  for (const count of [1, 2, 3]) {
    expect(
      wholeParts(count)
        .map((parts) => parts.join())
        .sort(),
    ).toEqual(slow(count));
  }
});

it('searches shares of a full coat in half octaves, 1/128 to 1', () => {
  expect(searchShares).toHaveLength(15);
  expect(searchShares[0]).toBe(1 / 128);
  expect(searchShares[14]).toBe(1);
  for (const [n, share] of searchShares.entries()) {
    if (n > 0) expect(share / (searchShares[n - 1] as number)).toBeCloseTo(Math.SQRT2, 12);
  }
});

it('doubling layers gives what each layer by itself gives', () => {
  const members = [5, 20, 28];
  const paints = members.map((member) => paintBox[member]).filter((paint) => paint !== undefined);
  const group = new GroupMixer(paintBox).mix(members);
  for (const [way, parts] of wholeParts(3).entries()) {
    // A full coat of the mix: that of each paint, by its parts of the volume.
    const sum = parts.reduce((all, part) => all + part);
    const coat = paints.reduce((all, paint, i) => all + (coatOf(paint) * (parts[i] ?? 0)) / sum, 0);
    for (const [n, share] of searchShares.entries()) {
      const load = share * coat;
      const wanted = colourOfWashes([{ paints, parts, load }]);
      const at = way * searchShares.length + n;
      const steps = [group.lightness[at], group.chroma[2 * at], group.chroma[2 * at + 1]];
      for (const i of [0, 1, 2] as const) {
        const off = (steps[i] as number) / labSteps - wanted[i];
        expect(Math.abs(off)).toBeLessThan(0.5 / labSteps + 1e-4); // kept in whole steps
      }
    }
  }
});

it('tells the darkest of a group alone as it does with all its mixes', () => {
  const mixer = new GroupMixer(paintBox);
  for (const members of [[3], [5, 20], [5, 20, 28], [0, 44, 91]]) {
    expect(mixer.darkest(members)).toBe(mixer.mix(members).darkest);
  }
});

it('works out how unsteady a mix is when it is asked for, by whichever mixer', () => {
  const members = [5, 20, 28];
  const group = new GroupMixer(paintBox).mix(members);
  expect(group.sensitivity.every(Number.isNaN)).toBe(true);
  const paints = members.flatMap((member) => paintBox[member] ?? []);
  const alone = paints.map((paint) => mixSpectra([paint], [1])).map(({ K, S }) => [K, S] as const);
  const mixer = new GroupMixer([]);
  for (const [way, parts] of wholeParts(3).entries()) {
    const { K, S, coat } = mixSpectra(paints, parts);
    const wanted = new MixSensitivity().of(K, S, coat, alone, parts);
    expect(mixer.sensitivityOf(group, way)).toBeCloseTo(wanted, 5);
    expect(mixer.sensitivityOf(group, way)).toBe(group.sensitivity[way]);
  }
});
