import { describe, expect, test } from 'vitest';
import type { Decision } from '../../../../app/core/decisions/painting.ts';
import { darkPaint, smallStudy } from '../../../../app/core/decisions/small-study.ts';
import { planWishes, readingWishes } from '../../../../app/core/decisions/wishes.ts';
import { emptyBox } from '../../../../app/core/paint/own-box.ts';
import { paintBox, paintCard } from '../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import { describeBrokenRules } from '../../../../app/core/plan/rules/check-rules.ts';
import { centredCrop } from '../../../../app/core/reference/reference.ts';
import { sheetOf } from '../../../../app/core/reference/sheet.ts';
import { studyTitle } from '../../../../app/core/words/painting-titles.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';
import { painted, readFor } from '../../../support/reading/rasters.ts';
import { paintingSample } from '../../../support/storage/kept-samples.ts';

// Plans are made here: on a busy machine some seconds each.
const photo = { width: 4000, height: 3000 };
const stroke = { stroke: [[0.1, 0.1]] as const, brush: 0.1 };
const decisions: readonly Decision[] = [
  { id: 'a', at: 1, kind: 'bands', count: 5 },
  { id: 'b', at: 2, kind: 'white', mode: 'keep', ...stroke },
  { id: 'c', at: 3, kind: 'white', mode: 'keep', ...stroke },
  { id: 'd', at: 4, kind: 'undo', undoes: 'c' },
  { id: 'e', at: 5, kind: 'evening', minutes: 120 },
];
const sheet = sheetOf('half', 'across');
const of = {
  ...paintingSample('p', 'photo'),
  title: 'Seed heads',
  reference: { photoId: 'photo', crop: centredCrop(photo, sheet), sheet },
  decisions,
};
let ids = 0;
const studyOf = (painting = of) =>
  smallStudy({
    painting,
    title: studyTitle(painting.title),
    paint: 'pb27-prussian-blue',
    createdAt: 9,
    newId: () => `new ${ids++}`,
  });

// A postcard is 148 x 105 mm: A6 of ISO 216:2007; three values and one dark paint: common practice, no source.
describe('the small study', () => {
  test('is a painting of its own over the same photo, on a postcard turned as the sheet', () => {
    const study = studyOf();
    expect(study).toMatchObject({
      title: 'Seed heads, small study',
      studyOf: 'p',
      planIds: [],
      sessionIds: [],
      reference: { photoId: 'photo', sheet: { widthMm: 148, heightMm: 105 } },
    });
    expect(study.id).not.toBe('p');
    expect(study.purpose).toBeUndefined();
    const upright = studyOf({
      ...of,
      reference: { ...of.reference, sheet: sheetOf('a3', 'upright') },
    });
    expect(upright.reference.sheet).toMatchObject({ widthMm: 105, heightMm: 148 });
  });

  test("its crop lies inside the first, about the same centre, in the postcard's shape", () => {
    const { crop } = studyOf().reference;
    const { crop: first } = of.reference;
    expect(crop.centre).toEqual(first.centre);
    expect(crop.size[0]).toBeLessThanOrEqual(first.size[0] + 1e-9);
    expect(crop.size[1]).toBeLessThanOrEqual(first.size[1] + 1e-9);
    expect((crop.size[0] * photo.width) / (crop.size[1] * photo.height)).toBeCloseTo(148 / 105, 9);
    const touches = [0, 1].some((i) => Math.abs((crop.size[i] ?? 0) - (first.size[i] ?? 1)) < 1e-9);
    expect(touches).toBe(true);
  });

  test('three values, one paint, two washes on dry paper, an hour; her whites go with it', () => {
    const study = studyOf();
    const reading = readingWishes(study.decisions, study.reference);
    expect(reading).toMatchObject({ bands: 3, familyEdits: [{ join: 'all' }] });
    expect(reading.whites).toHaveLength(1);
    const wishes = planWishes(study.decisions, emptyBox);
    expect(wishes).toMatchObject({
      colours: { mode: 'one', paint: 'pb27-prussian-blue' },
      washes: 2,
      evening: 60,
      edits: [{ technique: 'wet on dry' }, { technique: 'wet on dry' }],
    });
    expect(new Set(study.decisions.map(({ id }) => id)).size).toBe(study.decisions.length);
  });
});

test('the paint is the darkest of her box that is no white or black', () => {
  const cards = paintBox.map(paintCard);
  const darkest = (id: string) =>
    Math.min(...(cards.find((card) => card.id === id)?.ladder ?? []).map(([l]) => l));
  const owned = [
    'py74-arylide-yellow',
    'pb27-prussian-blue',
    'pbr7-burnt-sienna',
    'pbk9-bone-black',
  ];
  const best = darkPaint(cards, { ...emptyBox, owned });
  expect(best?.id).toBe(
    darkest('pb27-prussian-blue') < darkest('pbr7-burnt-sienna')
      ? 'pb27-prussian-blue'
      : 'pbr7-burnt-sienna',
  );
  expect(darkPaint(cards, { ...emptyBox, owned: ['pbk9-bone-black'] })?.id).toBe(
    darkPaint(cards, emptyBox)?.id,
  );
  expect(darkPaint([], emptyBox)).toBeNull();
});

test('all colours joined: one family in several values', async () => {
  const quarters = painted(120, 90, (x, y) =>
    x < 60 ? (y < 45 ? [190, 60, 50] : [60, 140, 70]) : y < 45 ? [60, 80, 170] : [225, 225, 220],
  );
  const { reading } = await readFor(quarters, { familyEdits: [{ join: 'all' }] });
  expect(reading.families).toHaveLength(1);
  expect(reading.bands.length).toBeGreaterThan(1);
});

describe('a plan of one paint', () => {
  const hills = tableOf(
    [97, 64, 30],
    [
      [-10, 20],
      [2, -18],
      [30, 10],
    ],
  );
  const borders = [
    { a: 3, b: 4, lengthMm: 300, soft: 0.9 },
    { a: 4, b: 5, lengthMm: 300, soft: 0, lost: 0.9 },
    { a: 0, b: 3, lengthMm: 300, soft: 0.9 },
  ];
  const wishes = {
    colours: { mode: 'one', paint: 'pb27-prussian-blue' },
    washes: 2,
    evening: 45,
  } as const;

  test('is sound, in two washes of one puddle, and speaks of no second colour', async () => {
    const plan = await buildPlan(madeReading(hills, borders), wishes, noCheckpoint);
    expect(describeBrokenRules(plan, { washes: 2, puddlesPerWash: 3 })).toEqual([]);
    expect(plan.palette.map(({ id }) => id)).toEqual(['pb27-prussian-blue']);
    expect(new Set(plan.mixes.flatMap(({ puddle }) => puddle ?? [])).size).toBe(1);
    expect(plan.steps.some(({ kind }) => kind === 'wash')).toBe(true);
    const said = JSON.stringify([
      plan.warnings,
      plan.palette.map(({ why }) => why),
      plan.mixes.map(({ notes }) => notes),
      plan.steps.map(({ title, prompt, watch, soften, touches }) => [
        title,
        prompt,
        watch,
        soften,
        touches,
      ]),
    ]);
    expect(said).not.toMatch(/colours|colour \d|second colour|other colour|run together/);
  });

  test('in twenty minutes: on dry paper throughout, nothing after the darks but their last touches', async () => {
    const soft = { ...madeReading(hills, borders), sheet: { widthMm: 148, heightMm: 105 } };
    const [quick, usual] = [
      await buildPlan(soft, wishes, noCheckpoint),
      await buildPlan(soft, { ...wishes, evening: 1440 }, noCheckpoint),
    ];
    const washes = quick.steps.filter(({ kind }) => kind === 'wash');
    expect(washes.map(({ technique }) => technique)).toEqual(['wet on dry', 'wet on dry']);
    expect(usual.steps.some(({ technique }) => technique === 'wet-in-wet')).toBe(true);
    const kinds = quick.steps.map(({ kind }) => kind);
    for (const kind of ['details', 'splatter', 'lift', 'last-lights'] as const)
      expect(kinds).not.toContain(kind);
    const longest = (plan: typeof quick) => plan.fit?.evenings[0]?.[1] ?? 0;
    expect(longest(quick)).toBeLessThan(0.6 * longest(usual));
    expect(describeBrokenRules(quick, { washes: 2, puddlesPerWash: 3 })).toEqual([]);
  });

  test('every value is reached, or it is said', async () => {
    const plan = await buildPlan(madeReading(hills, borders), wishes, noCheckpoint);
    const last = plan.steps.at(-1)?.after ?? [];
    const missed = plan.slots.some(
      ({ reserve, target }, i) => !reserve && Math.abs((last[i]?.[0] ?? 0) - target[0]) > 5,
    );
    const told = plan.warnings.some(({ code }) => /out-of-reach/.test(code));
    expect(told || !missed).toBe(true);
  });
});
