import { expect, test } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { defaultPaperLab } from '../../../../../app/core/paint/colour-of-washes.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { GroupMixer, type MixGroup } from '../../../../../app/core/palette/library/group-mixer.ts';
import { LibraryMemo } from '../../../../../app/core/palette/library/mix-library.ts';
import { GroupCosts } from '../../../../../app/core/palette/search/group-costs.ts';
import { seeded } from '../../../../support/seeded.ts';

// What a mix costs is reckoned here a second, slower way: mix by mix, by the tables of the library alone. The prices of
// another paint, 0.4, and of a mix that is unsteady, 0.5, are the project's own.

/** 15 shares of a full coat are kept of every mix, half an octave from one to the next. */
const shares = 15;
const octave = Math.log(2) / 2;

/** Each mix of a group thinned to a lightness, and by how much L* falls there from one share to the next. */
function* thinned(group: MixGroup, wanted: number): Generator<{ lab: Lab; fall: number }> {
  const { lightness, chroma } = group;
  for (let mix = 0; mix * shares < lightness.length; mix++) {
    const labs = Array.from({ length: shares }, (_, n): Lab => {
      const i = mix * shares + n;
      const [l = 0, a = 0, b = 0] = [lightness[i], chroma[2 * i], chroma[2 * i + 1]];
      return [l / 256, a / 256, b / 256];
    });
    const n = labs.findIndex(([l]) => l <= wanted);
    const dark = labs.at(n) as Lab; // the full coat where none is dark enough
    const fallAt = (n < 0 ? shares : n + 1) - 1;
    const one = labs[Math.max(0, fallAt - 1)] as Lab;
    const fall = fallAt === 0 ? (labs[0] as Lab)[0] - (labs[1] as Lab)[0] : one[0] - dark[0];
    const light = n > 0 ? (labs[n - 1] as Lab) : defaultPaperLab;
    const part = n < 0 ? 1 : Math.min(1, (light[0] - wanted) / (light[0] - dark[0]));
    const lab = light.map((own, c) => own + part * ((dark[c] as number) - own));
    yield { lab: lab as unknown as Lab, fall: Math.max(0, fall) };
  }
}

function slowCost(group: MixGroup, lab: Lab): number {
  const mixer = new GroupMixer([]);
  const costs = [...thinned(group, lab[0])].map(
    ({ lab: own, fall }, n) =>
      colourDifference(lab, own) + (0.5 * mixer.sensitivityOf(group, n) * fall) / octave,
  );
  return Math.min(...costs) + 0.4 * (group.members.length - 1);
}

// Transparent paints and an earth: no mix of them grows lighter again with more of it.
const ids = [
  'py43-yellow-ochre',
  'pv19-quinacridone-red',
  'pb29-ultramarine-blue',
  'pbr7-burnt-sienna',
];
const library = new LibraryMemo().libraryOf(
  ids.map((id) => paintBox.find((paint) => paint.id === id) as (typeof paintBox)[0]),
  noCheckpoint,
);
const random = seeded(8);
const wanted: Lab[] = [
  ...Array.from(
    { length: 40 },
    (): Lab => [15 + 80 * random(), 60 * random() - 25, 70 * random() - 35],
  ),
  // Lighter than the palest share of all, darker than a full coat, and two of one lightness after each other.
  ...([
    [94.9, 1, 4],
    [93.5, 0, 2],
    [3, 2, -1],
    [60, 5, 5],
    [60, -20, 9],
    [96.5, 0, 0],
  ] as const),
];
const targets = wanted.map((lab) => ({ lab, weight: 1 / wanted.length, band: 1, family: 1 }));

test('a group costs what the best of its mixes costs, thinned to the lightness of each colour', async () => {
  const costs = new GroupCosts(targets);
  const { groups } = await library;
  expect(new Set(groups.map(({ members }) => members.length))).toEqual(new Set([1, 2, 3]));
  for (const group of groups) {
    for (let i = 1; i < group.lightness.length; i++)
      if (i % shares)
        expect(group.lightness[i]).toBeLessThanOrEqual(group.lightness[i - 1] as number);
    const limits = new Float32Array(targets.length).fill(1e6);
    const found = new Float32Array(targets.length + 3).fill(-1);
    costs.write(group, limits, found, 2);
    for (const [t, { lab }] of targets.entries())
      expect(found[t + 2]).toBeCloseTo(slowCost(group, lab), 3);
    expect([found[0], found[1], found.at(-1)]).toEqual([-1, -1, -1]);
  }
});

test('a cost is written only where it is less than its limit, and then in full', async () => {
  const costs = new GroupCosts(targets);
  for (const group of (await library).groups) {
    const full = new Float32Array(targets.length);
    costs.write(group, full.slice().fill(1e6), full, 0);
    for (const more of [1e-3, -1e-3]) {
      const found = new Float32Array(targets.length).fill(-1);
      costs.write(
        group,
        full.map((cost) => cost + more),
        found,
        0,
      );
      for (const [t, cost] of full.entries()) expect(found[t]).toBeCloseTo(more > 0 ? cost : -1, 4);
    }
  }
});
