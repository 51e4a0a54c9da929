import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { proposeWashes, washesReach } from '../../../../../app/core/plan/evening/propose-washes.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import type { SolvedPalette } from '../../../../../app/core/plan/solve/solve-palette.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { madeFacts } from '../../../../support/plan/made-work.ts';

const grey = (lightness: number): Lab => [lightness, 0, 0];

/** Slots of these bands with their planned lightness and share, painted in one go as `got` says. */
function solvedAs(
  slots: readonly { band: number; planned: number; share?: number; passage?: string }[],
  got: readonly (number | null)[],
): Pick<PlanFacts, 'slots' | 'passages'> {
  const facts = madeFacts({
    slots: slots.map(({ band, planned, share = 0.2, passage = 'sheet' }) => ({
      lightness: planned,
      band,
      share,
      passage,
    })),
    washes: {},
  });
  const painted = got.flatMap((lightness, i) =>
    lightness === null ? [] : [[i, lightness] as const],
  );
  const wash = {
    wash: 1,
    weak: [],
    full: [],
    mixes: [],
    slots: painted.map(([i]) => i),
    after: painted.map(([, lightness]) => grey(lightness)),
  };
  return { slots: facts.slots, passages: [{ passage: 'sheet', washes: [wash] }] };
}

// Limits and figures are (own): the docstrings of what is tested say why.
describe('how near washes come', () => {
  test('each band by the area of its slots; the one missed by most is told, with its sign', () => {
    const { worst, within5 } = washesReach(
      solvedAs(
        [
          { band: 2, planned: 70, share: 0.3 },
          { band: 2, planned: 70, share: 0.1 },
          { band: 3, planned: 40, share: 0.2 },
        ],
        [72, 62, 43], // +2 and -8 at 3 to 1, and +3
      ),
    );
    expect(worst?.band).toBe(2);
    expect(worst?.missed).toBeCloseTo((3 * 2 + 8) / 4, 9);
    expect(worst?.tooLight).toBeCloseTo((3 * 2 - 8) / 4, 9);
    expect(within5).toBeCloseTo(0.5 / 0.6, 9);
  });

  test('of bands missed alike the lighter is told; what was not painted counts for nothing', () => {
    const { worst } = washesReach(
      solvedAs(
        [
          { band: 4, planned: 20 },
          { band: 3, planned: 40 },
          { band: 2, planned: 70 },
        ],
        [23, 43, null],
      ),
    );
    expect([worst?.band, Math.round(worst?.missed ?? 0)]).toEqual([3, 3]);
    expect(washesReach(solvedAs([{ band: 2, planned: 70 }], [null])).worst).toBeUndefined();
  });

  test('the last wash over a slot is what is seen', () => {
    const solved = solvedAs([{ band: 2, planned: 70 }], [90]);
    const first = solved.passages[0]?.washes[0];
    if (!first) throw new Error('no wash');
    const later = { ...first, wash: 2, after: [grey(71)] };
    const both = { ...solved, passages: [{ passage: 'sheet', washes: [first, later] }] };
    expect(washesReach(both).worst?.missed).toBeCloseTo(1, 9);
  });
});

describe('how many washes', () => {
  const four = [80, 60, 40, 20].map((planned, i) => ({ band: i + 2, planned }));
  const words = 5;

  /** A solver that misses the darkest of the slots by so much, by number of washes. */
  async function proposed(missed: Readonly<Record<number, number>>, slots = four, wishes = {}) {
    const asked: number[] = [];
    const made = solvedAs(
      slots,
      slots.map(() => null),
    ).slots as Slot[];
    const answer = await proposeWashes(made, words, wishes, async (washes) => {
      asked.push(washes);
      const got = slots.map(
        ({ planned }, i) => planned + (i === slots.length - 1 ? (missed[washes] ?? 0) : 0),
      );
      return { facts: solvedAs(slots, got) } as unknown as SolvedPalette;
    });
    return { ...answer, asked };
  }

  test('half as many as values where that reaches them', async () => {
    expect(await proposed({ 2: 2.4 })).toMatchObject({ washes: 2, asked: [2], isAsked: false });
    expect((await proposed({ 2: 2.4 })).why).toBe(
      'Two washes: the darks reach their value in the last; a third would only overwork the paper.',
    );
    expect((await proposed({}, [...four, { band: 6, planned: 10 }])).asked).toEqual([3]);
  });

  test('one more where a value is missed and comes nearer by half an L* or more', async () => {
    expect(await proposed({ 2: 4, 3: 3.5 })).toMatchObject({ washes: 3, asked: [2, 3] });
    expect(await proposed({ 2: 4, 3: 3.6 })).toMatchObject({ washes: 2, asked: [2, 3] });
    expect((await proposed({ 2: 4, 3: 3.6 })).why).toBe(
      'Two washes: a third would tire the paper and come no nearer to the values.',
    );
  });

  test('or brings more of the area within 5 L*', async () => {
    expect((await proposed({ 2: 5.2, 3: 4.9 })).washes).toBe(3);
    expect((await proposed({ 2: 5.2, 3: 5.1 })).washes).toBe(2);
  });

  // Words by tenths of a value; band 5 of five is the darkest.
  test.each([
    [2.6, 'a third of a value too light'],
    [-2.6, 'a third of a value too dark'],
    [3.9, 'a third of a value too light'],
    [4, 'half a value too light'],
    [5.9, 'half a value too light'],
    [6, 'most of a value too light'],
    [8.9, 'most of a value too light'],
    [9, 'a whole value too light'],
    [12.9, 'a whole value too light'],
    [13, '1.3 values too light'],
  ])('missed by %f L*: %s', async (missed, said) => {
    const { why } = await proposed({ 2: missed, 3: 0 });
    expect(why).toBe(`Three washes: with two the darkest shapes would come out ${said}.`);
  });

  test('no more than the paper bears, nor than there are steps for', async () => {
    const paper = { gsm: 190, fibre: 'cellulose' } as const;
    const tired = await proposed({ 2: 9, 3: 0 }, four, { paper });
    expect(tired).toMatchObject({ washes: 2, asked: [2] });
    expect(tired.why).toMatch(/bears no more/);
  });

  /** Four values in the ground, so many in the subject, as slots of both. */
  const withSubject = (values: number) => [
    ...four.map((slot) => ({ ...slot, passage: 'ground' })),
    ...four.slice(0, values).map((slot) => ({ ...slot, passage: 'subject' })),
  ];

  // Steps of washes are told one by one, each with its drying check: four of them make a plan of fourteen steps (own).
  test.each([
    [1, 3],
    [2, 2],
    [4, 2],
  ])(
    'ground and subject make at most four wash steps: with %i values in the subject %i washes',
    async (values, washes) => {
      expect(await proposed({ 2: 9, 3: 0 }, withSubject(values))).toMatchObject({ washes });
    },
  );

  test('where she asks for more, ten wash steps', async () => {
    expect(await proposed({}, withSubject(4), { washes: 4 })).toMatchObject({ washes: 4 });
    const six = [...four, ...four.slice(2).map((slot) => ({ ...slot, band: slot.band + 2 }))];
    const parted = ['ground', 'subject'].flatMap((passage) =>
      six.map((slot) => ({ ...slot, passage })),
    );
    const asked = await proposed({}, parted, { washes: 6 });
    expect(asked.washes).toBe(5);
    expect(asked.why).toMatch(/too many steps/);
  });

  test('one value wants one wash, two want two, and nothing is solved for that', async () => {
    expect(await proposed({}, four.slice(0, 1))).toMatchObject({ washes: 1, asked: [] });
    expect(await proposed({}, four.slice(0, 2))).toMatchObject({ washes: 2, asked: [] });
    expect(await proposed({}, [])).toMatchObject({ washes: 1, asked: [] });
    // Values are counted in each passage: two and two are two.
    const parted = four.map((slot, i) => ({ ...slot, passage: i < 2 ? 'ground' : 'subject' }));
    expect((await proposed({}, parted)).washes).toBe(2);
  });

  test('as many as she asks for, up to the values there are', async () => {
    expect(await proposed({}, four, { washes: 4 })).toMatchObject({
      washes: 4,
      isAsked: true,
      why: 'Four washes, as you asked.',
    });
    const fewer = await proposed({}, four, { washes: 6 });
    expect(fewer.washes).toBe(4);
    expect(fewer.why).toBe(
      'Four washes, not the 6 you asked for: there are no more values to paint.',
    );
  });
});
