import { describe, expect, it, test } from 'vitest';
import { passagesChoices } from '../../../../../app/core/decisions/plan-edit.ts';
import type { PlanWishes } from '../../../../../app/core/decisions/plan-wishes.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../../../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../../../../app/core/plan/plan-memory.ts';
import { describeBrokenRules } from '../../../../../app/core/plan/rules/check-rules.ts';
import { maskWhitesForJointWash } from '../../../../../app/core/plan/solve/solve-palette.ts';
import { isMostlyLost, passageLine } from '../../../../../app/core/reading/edges/slot-borders.ts';
import type { White } from '../../../../../app/core/reading/whites/whites.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { type MadeSlot, madeReading, tableOf } from '../../../../support/plan/made-reading.ts';
import { chosen } from '../../../../support/plan/solved.ts';
import {
  limits,
  order,
  parted,
  passage,
  planned,
  washesOf,
} from '../../../../support/reading/made-passages.ts';

const reading = madeReading(tableOf([97, 74, 52, 28], [[2, -18]]));

/** Counts what is worked out step by step: searches and solves. */
async function planRemembering(wishes: PlanWishes, memory = createPlanMemory()) {
  let pauses = 0;
  const plan = await buildPlan(
    reading,
    { box: chosen, paletteSize: 3, ...wishes },
    async () => {
      pauses++;
    },
    memory,
  );
  return { plan, pauses };
}

it('a plan made from memory is the same, and nothing is searched or solved for it', async () => {
  const memory = createPlanMemory();
  const first = await planRemembering({ washes: 2 }, memory);
  expect(first.pauses).toBeGreaterThan(5);
  for (const wishes of [{ washes: 2 }, { washes: 2, evening: 600 }, { washes: 2, evening: 200 }]) {
    const again = await planRemembering(wishes, memory);
    expect(again.pauses).toBeLessThan(2);
    expect(again.plan).toEqual((await planRemembering(wishes)).plan);
  }
});

it('another number of washes, other paints or another picture are worked out anew', async () => {
  const memory = createPlanMemory();
  await planRemembering({ washes: 2 }, memory);
  const three = await planRemembering({ washes: 3 }, memory);
  expect(three.plan).toEqual((await planRemembering({ washes: 3 })).plan);
  const [fewer, ...rest] = chosen;
  const without = await planRemembering({ washes: 2, exclude: [fewer ?? ''] }, memory);
  expect(without.plan.palette.map(({ id }) => id).every((id) => rest.includes(id))).toBe(true);
});

// R18: a lost border is painted across while wet; common practice, no source.
const tones = [85, 62, 38];

const puddlesOf = (plan: WashPlan, wash: number): Set<string> =>
  new Set(plan.mixes.flatMap((mix) => (mix.wash === wash ? (mix.puddle ?? []) : [])));

describe('the line', () => {
  test('is measured by length, between painted shapes, each stretch by what is lost of it', () => {
    const reading = madeReading(
      [...passage('ground', 99, 60), ...passage('subject', 99, 60)],
      [
        { a: 0, b: 2, lengthMm: 500, soft: 0, lost: 1 }, // white beside white: nothing is painted
        { a: 0, b: 3, lengthMm: 100, soft: 0, lost: 1 }, // white beside paint: not painted across
        { a: 1, b: 3, lengthMm: 300, soft: 0, lost: 0.8 },
        { a: 0, b: 1, lengthMm: 900, soft: 0, lost: 1 }, // no line between passages
      ],
    );
    expect(reading.slots.map(({ reserve }) => reserve)).toEqual([true, false, true, false]);
    expect(passageLine(reading)).toEqual({ lengthMm: 400, lost: 0.6 });
    expect(isMostlyLost(reading)).toBe(true);
    expect(passageLine(madeReading(tableOf(tones, [[0, 0]])))).toEqual({ lengthMm: 0, lost: 0 });
  });
});

describe('ground and subject together', () => {
  test('are proposed where most of the line is lost, and are painted as one', async () => {
    const plan = await planned(tones, tones, { soft: 0.1, lost: 0.6 });
    expect(plan.passages).toMatchObject({ painted: 'together', proposed: 'together' });
    const washes = washesOf(plan, 'sheet');
    expect(order(plan)).toEqual(washes.map(() => 'sheet'));
    expect(washes.map(({ key }) => key)).toEqual(washes.map((_, n) => `wash/sheet/${n + 1}`));
    const lightest = washes.map(({ bands }) => Math.min(...bands));
    expect(lightest).toEqual(lightest.toSorted());
    const [first] = washes;
    expect(first?.slots).toEqual([1, 2, 4, 5]); // all but the whites
    expect(words(first?.watch)).toContain(
      'most of the line between them is lost. Paint across the line',
    );
    expect(first?.rules).toContain('R18');
    expect(words(first?.title)).toBe('First wash');
    expect(describeBrokenRules(plan, limits)).toEqual([]);
  });

  test('have one colour on either side of a lost line, near the mean of what both are to be', async () => {
    const other = [82, 65, 34];
    const plan = await planned(tones, other, { soft: 0.1, lost: 1 });
    const last = plan.steps.at(-1)?.after ?? [];
    // The lightest of the ground is white here, that of the subject is not.
    const isWhite = (i: number): boolean => plan.slots[i]?.reserve ?? true;
    const pairs = [0, 1, 2].filter((i) => !isWhite(i) && !isWhite(i + 3));
    expect(pairs.length).toBeGreaterThan(1);
    for (const { after } of plan.steps) {
      for (const i of pairs) expect(after[i]).toEqual(after[i + 3]);
    }
    for (const band of [1, 2]) {
      const wanted = [band, band + 3].map((i) => plan.slots[i]?.target[0] as number);
      const mean = ((wanted[0] as number) + (wanted[1] as number)) / 2;
      expect(Math.abs((last[band]?.[0] as number) - mean)).toBeLessThan(2);
    }
    const apart = await planned(tones, other, { soft: 0.1, lost: 0.4 });
    expect(apart.passages?.proposed).not.toBe('together');
    const ends = apart.steps.at(-1)?.after ?? [];
    expect(Math.abs((ends[2]?.[0] as number) - (ends[5]?.[0] as number))).toBeGreaterThan(1.5);
  });

  test('share at most three puddles a wash, however many colours they have', async () => {
    const colours = [
      [-14, 26],
      [2, -24],
      [12, 18],
    ] as const;
    const slots = ['ground', 'subject'].flatMap((name) =>
      tableOf(tones, colours).map((one): MadeSlot => ({ ...one, passage: name })),
    );
    const line = Array.from({ length: 9 }, (_, a) => ({
      a,
      b: a + 9,
      lengthMm: 60,
      soft: 0,
      lost: 0.9,
    }));
    const plan = await buildPlan(
      madeReading(slots, line),
      { chosen: ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'] },
      noCheckpoint,
    );
    expect(plan.passages?.painted).toBe('together');
    for (const wash of [1, 2, 3]) expect(puddlesOf(plan, wash).size).toBeLessThanOrEqual(3);
    expect(describeBrokenRules(plan, limits)).toEqual([]);
  });

  test('stop where two colours of one value meet crisply, and only there', async () => {
    const coloured = (name: string, family: number, a: number, b: number): MadeSlot[] =>
      passage(name, ...tones).map((one) => ({ ...one, family, lab: [one.lab[0], a, b] }));
    const slots = [...coloured('ground', 1, 2, -24), ...coloured('subject', 2, 4, 30)];
    const plan = (crispMm: number) =>
      buildPlan(
        madeReading(slots, [
          { a: 2, b: 5, lengthMm: 300, soft: 0, lost: 1 },
          { a: 1, b: 4, lengthMm: crispMm, soft: 0 },
        ]),
        { chosen: ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'] },
        noCheckpoint,
      );
    const stop = 'stop at it, and leave a hair of paper dry there';
    const said = washesOf(await plan(100), 'sheet').filter(({ watch }) =>
      words(watch).includes(stop),
    );
    expect(said).toHaveLength(1);
    expect(words(said[0]?.watch)).toContain(`crisp between the colour 1 and the colour 2: ${stop}`);
    for (const { watch } of (await plan(30)).steps) expect(words(watch)).not.toContain(stop);
  });
});

describe('her own choice', () => {
  test.each(passagesChoices)(
    '%s is followed and obeys the rules, whatever was proposed',
    async (passages) => {
      for (const lost of [0, 0.9]) {
        const plan = await planned([60, 45, 20], [90, 75, 60], { soft: 0.1, lost, passages });
        const proposed = lost > 0.5 ? 'together' : 'subject first';
        expect(plan.passages).toMatchObject({ painted: passages, proposed });
        const [name = ''] = passages.split(' ');
        expect(order(plan)[0]).toBe(passages === 'together' ? 'sheet' : name);
        expect(new Set(order(plan)).size).toBe(passages === 'together' ? 1 : 2);
        expect(words(plan.passages?.why).includes('as you asked; proposed was')).toBe(
          passages !== proposed,
        );
        expect(describeBrokenRules(plan, limits)).toEqual([]);
      }
    },
  );

  test('means nothing without a subject', async () => {
    const reading = madeReading(tableOf(tones, [[0, 10]]));
    const box = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
    const { id: _, ...plain } = await buildPlan(reading, { box }, noCheckpoint);
    expect(plain.passages).toBeUndefined();
    for (const passages of passagesChoices) {
      const { id: _id, ...asked } = await buildPlan(reading, { box, passages }, noCheckpoint);
      expect(asked).toEqual(plain);
    }
  });

  test('changes of steps that are gone rest, and count again when they are back', async () => {
    const edits = [{ kind: 'skip', key: 'wash/subject/2', skipped: true }] as const;
    const line = { soft: 0.1, lost: 0.9 };
    const together = await planned(tones, tones, { ...line, edits });
    expect(together.steps).toEqual((await planned(tones, tones, line)).steps);
    expect(together.leftOut).toBeUndefined();
    const apart = await planned(tones, tones, { ...line, edits, passages: 'ground first' });
    expect(apart.leftOut?.map(({ key }) => key)).toEqual(['wash/subject/2']);
  });
});

test('whites a wet wash over both would drown are masked, but what she decided stays', () => {
  const white = (shortSideMm: number, more: Partial<White> = {}): White => ({
    at: [0.5, 0.5],
    slot: 0,
    areaMm2: 4,
    shortSideMm,
    softShare: 0,
    byHand: false,
    way: 'round',
    why: '',
    ...more,
  });
  const whites = [white(2), white(20), white(2, { decided: true }), white(0.5, { way: 'last' })];
  const made = (soft: number) => ({
    ...parted([99, 60, 40], tones, { soft, lost: 1 }),
    whites,
  });
  const joined = (reading: ReturnType<typeof made>) =>
    reading.slots.map((slot) => ({ ...slot, passage: 'sheet' }));
  const ways = (reading: ReturnType<typeof made>, slots = joined(reading)) =>
    maskWhitesForJointWash(reading, slots).whites?.map(({ way }) => way);
  expect(ways(made(0.9))).toEqual(['mask', 'round', 'round', 'last']);
  const before = whites.map(({ way }) => way);
  expect(ways(made(0.1))).toEqual(before);
  expect(ways(made(0.9), made(0.9).slots as ReturnType<typeof joined>)).toEqual(before);
  // A slot of which nothing is left is not painted: its soft border to the white counts for nothing.
  const mixed = made(0.9);
  const borders = mixed.borders.map((border) => (border.a === 1 ? { ...border, soft: 0 } : border));
  expect(ways({ ...mixed, borders })).toEqual(['mask', 'round', 'round', 'last']);
  const slots = mixed.slots.map((slot, i) => (i === 1 ? { ...slot, share: 0 } : slot));
  expect(ways({ ...mixed, borders, slots })).toEqual(before);
});
