import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import type { LabPlanes } from '../../../../../app/core/raster/linear-raster.ts';
import { simplify } from '../../../../../app/core/raster/simplify.ts';
import {
  chooseFamilies,
  type FamilyPlaces,
  familyMap,
  familyPlaces,
} from '../../../../../app/core/reading/families/choose-families.ts';
import {
  binColours,
  type ColourBins,
} from '../../../../../app/core/reading/families/colour-bins.ts';
import {
  editFamilies,
  familyMeant,
  type SeenFamily,
} from '../../../../../app/core/reading/families/edit-families.ts';
import type {
  FamilyColour,
  FamilyEdit,
} from '../../../../../app/core/reading/families/family-edit.ts';
import { opened, painted, photographs, readFor } from '../../../../support/reading/rasters.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const planesOf = (colours: readonly Lab[]): LabPlanes => ({
  lightness: Float32Array.from(colours, ([l]) => l),
  a: Float32Array.from(colours, ([, a]) => a),
  b: Float32Array.from(colours, ([, , b]) => b),
});

const around = (count: number, [l, a, b]: Lab, noise: number, seed = 1): Lab[] => {
  const random = seeded(seed);
  const stray = (): number => noise * (random() + random() - 1);
  return Array.from({ length: count }, (): Lab => [l + stray(), a + stray(), b + stray()]);
};

/** The families as the picture has them, found once. */
const found = new WeakMap<LabPlanes, { cells: ColourBins; places: FamilyPlaces }>();

function mapOf(planes: LabPlanes, edits: readonly FamilyEdit[]): Uint8Array {
  let of = found.get(planes);
  if (!of) {
    const cells = binColours(planes);
    of = { cells, places: familyPlaces(chooseFamilies(cells)) };
    found.set(planes, of);
  }
  return familyMap(planes, editFamilies([{ ...of, where: null }], planes, edits));
}

/** Mean a* and b* of each family of a map, pixel by pixel: the slow way round. */
function coloursIn(planes: LabPlanes, map: Uint8Array): SeenFamily[] {
  const sums = new Map<number, { a: number; b: number; count: number }>();
  for (let i = 0; i < map.length; i++) {
    const family = map[i] as number;
    const sum = sums.get(family) ?? { a: 0, b: 0, count: 0 };
    sum.a += planes.a[i] as number;
    sum.b += planes.b[i] as number;
    sum.count++;
    sums.set(family, sum);
  }
  return [...sums]
    .sort(([one], [other]) => one - other)
    .map(([family, { a, b, count }]) => ({ family, a: a / count, b: b / count }));
}

const colour = ({ a, b }: SeenFamily): FamilyColour => [a, b];
const distinct = (map: Iterable<number>): number => new Set(map).size;

const red: Lab = [50, 40, 30];
const green: Lab = [60, -30, 35];
const blue: Lab = [40, 10, -40];
const three = planesOf([...around(900, red, 3), ...around(300, green, 3), ...around(100, blue, 1)]);

describe('made colours', () => {
  test('two joined are one, and the third stays', () => {
    const map = mapOf(three, [
      {
        join: [
          [40, 30],
          [10, -40],
        ],
      },
    ]);
    const [reds, greens, blues] = [map.slice(0, 900), map.slice(900, 1200), map.slice(1200)];
    expect([distinct(reds), distinct(greens), distinct(blues)]).toEqual([1, 1, 1]);
    expect(reds[0]).toBe(blues[0]);
    expect(greens[0]).not.toBe(reds[0]);
  });

  test('what was joined parts again into what it was', () => {
    const edits: FamilyEdit[] = [
      {
        join: [
          [40, 30],
          [10, -40],
        ],
      },
    ];
    const [joined] = coloursIn(three, mapOf(three, edits));
    const again = mapOf(three, [...edits, { part: colour(joined as SeenFamily) }]);
    expect(distinct(again)).toBe(3);
    const alike = (one: Uint8Array): string =>
      [one[0] === one[1200], one[0] === one[900], distinct(one.slice(1200))].join();
    expect(alike(again)).toBe(alike(mapOf(three, [])));
  });

  test('an edit rests where there is nothing to change', () => {
    const plain = mapOf(three, []);
    const same = (edits: readonly FamilyEdit[]) => expect(mapOf(three, edits)).toEqual(plain);
    same([
      {
        join: [
          [40, 30],
          [41, 29],
        ],
      },
    ]); // one family by now
    same([
      {
        join: [
          [40, 30],
          [-60, -60],
        ],
      },
    ]); // nothing near the second
    same([{ part: [-60, -60] }]);
    same([{ part: [10, -40] }]); // one colour, hardly strayed
    const flat = planesOf(Array.from({ length: 50 }, () => red));
    expect(distinct(mapOf(flat, [{ part: [40, 30] }]))).toBe(1);
    const black = planesOf([[0, 0, 0]]);
    expect([...mapOf(black, [{ part: [0, 0] }])]).toEqual([0]);
  });

  test('never more than six, however often she parts; the same every time', () => {
    const random = seeded(9);
    const stray = (): number => 80 * (random() - 0.5);
    const many = planesOf(Array.from({ length: 200 }, (): Lab => [50, stray(), stray()]));
    const edits: FamilyEdit[] = [];
    for (let i = 0; i < 7; i++) {
      const seen = coloursIn(many, mapOf(many, edits));
      edits.push({ part: colour(seen[i % seen.length] as SeenFamily) });
    }
    expect(distinct(mapOf(many, edits))).toBe(6);
    expect(mapOf(many, edits)).toEqual(mapOf(many, edits));
    while (edits.length < 20) {
      const [one, other] = coloursIn(many, mapOf(many, edits));
      if (!one || !other) break;
      edits.push({ join: [colour(one), colour(other)] });
    }
    expect(distinct(mapOf(many, edits))).toBe(1);
  });

  test('noise in the blacks stays with one side when the shadows are parted', () => {
    const random = seeded(4);
    const stray = (): number => 16 * (random() - 0.5);
    const blacks = Array.from({ length: 300 }, (): Lab => [4 * random(), stray(), stray()]);
    const planes = planesOf([
      ...around(500, [25, 3, 7], 0.3),
      ...around(500, [25, 6, 12], 0.3),
      ...around(500, [70, -10, -30], 1),
      ...blacks,
    ]);
    const before = mapOf(planes, []);
    expect(distinct(before)).toBe(2);
    const shadows = coloursIn(planes, before).find(({ b }) => b > 0) as SeenFamily;
    const after = mapOf(planes, [{ part: colour(shadows) }]);
    expect(distinct(after)).toBe(3);
    expect(distinct(after.slice(0, 500)) + distinct(after.slice(500, 1000))).toBe(2);
    expect(distinct(after.slice(1500))).toBe(1);
  });
});

test('where ground and subject are read apart, a family is the colour of its own pixels alone', () => {
  // Ground: a green field and a grey wall; subject: a red coat.
  const colours: Lab[] = [
    ...around(300, [55, -40, 40], 2, 1),
    ...around(300, [55, 0, 0], 2, 2),
    ...around(300, [55, 50, 30], 2, 3),
  ];
  const planes = planesOf(colours);
  const map = Uint8Array.from(colours, (_, i) => (i < 600 ? 0 : 1));
  const read = (value: number, places: FamilyPlaces) => {
    const where = { map, value };
    return { where, cells: binColours(planes, undefined, where), places };
  };
  const field = familyPlaces([
    [-40, 40],
    [0, 0],
  ]);
  const apart = [
    read(0, field),
    read(
      1,
      field.map(() => 2),
    ),
  ];
  const join: FamilyEdit = {
    join: [
      [-40, 40],
      [50, 30],
    ],
  };
  const joined = familyMap(planes, editFamilies(apart, planes, [join]));
  const familyOf = (from: number) => new Set(joined.subarray(from, from + 300));
  expect([familyOf(0), familyOf(300), familyOf(600)].map((each) => [...each])).toEqual([
    [0],
    [1],
    [0],
  ]);
});

describe.each(photographs)('%s', (path) => {
  const planesOn = async (widthMm: number): Promise<LabPlanes> => {
    const { raster } = await opened(path, 140);
    return runToEnd(simplify(raster, raster.width / widthMm));
  };
  const usual = planesOn(381);

  test('every family is the one meant by its own colour, to be joined and to be parted', async () => {
    const planes = await usual;
    const plain = mapOf(planes, []);
    const seen = coloursIn(planes, plain);
    expect(seen.length).toBeGreaterThan(1);
    for (const [i, one] of seen.entries()) {
      const parted = mapOf(planes, [{ part: colour(one) }]);
      const numbers = seen.map(({ family }) =>
        distinct(parted.filter((_, pixel) => plain[pixel] === family)),
      );
      expect(numbers).toEqual(seen.map(({ family }) => (family === one.family ? 2 : 1)));
      expect(distinct(parted)).toBe(seen.length + 1);
      for (const other of seen.slice(0, i)) {
        const joined = mapOf(planes, [{ join: [colour(one), colour(other)] }]);
        const pairs = new Set(
          joined.map((family, pixel) => 16 * (plain[pixel] as number) + family),
        );
        expect(pairs.size).toBe(seen.length);
        expect(distinct(joined)).toBe(seen.length - 1);
        expect(joined[plain.indexOf(one.family)]).toBe(joined[plain.indexOf(other.family)]);
      }
    }
  });

  test('on a sheet twice and half as large the family meant is the one that lies there', async () => {
    const planes = await usual;
    const plain = mapOf(planes, []);
    for (const widthMm of [762, 190]) {
      const others = await planesOn(widthMm);
      const there = mapOf(others, []);
      const seenThere = coloursIn(others, there);
      for (const one of coloursIn(planes, plain)) {
        const counts = seenThere.map(
          ({ family }) =>
            there.filter((own, pixel) => own === family && plain[pixel] === one.family).length,
        );
        const most = seenThere[counts.indexOf(Math.max(...counts))]?.family;
        expect(familyMeant(seenThere, colour(one))).toBe(most);
      }
    }
  });
});

describe('in a reading', () => {
  const quarters = painted(120, 90, (x, y) =>
    x < 60 ? (y < 45 ? [190, 60, 50] : [60, 140, 70]) : y < 45 ? [60, 80, 170] : [225, 225, 220],
  );

  test('join and part follow each other through the readings she sees', async () => {
    const colourOf = (one?: { lab: Lab }): FamilyColour => [one?.lab[1] ?? 0, one?.lab[2] ?? 0];
    const { reading: first } = await readFor(quarters);
    expect(first.families).toHaveLength(4);
    const blues = first.families.find(({ lab }) => lab[2] < -20);
    const reds = first.families.find(({ lab }) => lab[1] > 30);
    const join: FamilyEdit = { join: [colourOf(blues), colourOf(reds)] };
    const { reading: second } = await readFor(quarters, { familyEdits: [join] });
    expect(second.families).toHaveLength(3);
    expect(second.families[0]?.share).toBeCloseTo(0.5, 1);
    const part: FamilyEdit = { part: colourOf(second.families[0]) };
    const { reading: third } = await readFor(quarters, { familyEdits: [join, part] });
    expect(third.families.map(({ name }) => name).sort()).toEqual(
      first.families.map(({ name }) => name).sort(),
    );
    const elsewhere = { widthMm: 762, heightMm: 558 };
    const { reading: larger } = await readFor(quarters, { familyEdits: [join] }, elsewhere);
    expect(larger.families.map(({ name }) => name)).toEqual(
      second.families.map(({ name }) => name),
    );
  });

  test('without edits nothing changes', async () => {
    expect(await readFor(quarters, { familyEdits: [] })).toEqual(await readFor(quarters));
  });
});
