import { beforeAll, expect, it } from 'vitest';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import type { Step, WashPlan } from '../../../../../app/core/plan/plan.ts';
import { checkRules, describeBrokenRules } from '../../../../../app/core/plan/rules/check-rules.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

const limits = { washes: 3, puddlesPerWash: 3 };
let sound: WashPlan;

beforeAll(async () => {
  const hills = tableOf(
    [97, 74, 52, 28],
    [
      [-10, 20],
      [2, -18],
    ],
  ).map((slot) => (slot.band === 1 ? { ...slot, shapes: 12, smallShapes: 9 } : slot));
  const soft = [{ a: 0, b: 2, lengthMm: 300, soft: 0.9 }];
  const chosen = ['py74-arylide-yellow', 'pb27-prussian-blue', 'pbr7-burnt-umber'];
  sound = await buildPlan(madeReading(hills, soft), { chosen, washes: 3 }, noCheckpoint);
});

/** The plan with its steps changed, numbered anew. */
const changed = (change: (steps: readonly Step[]) => readonly Step[]): WashPlan => ({
  ...sound,
  steps: change(sound.steps).map((step, i) => ({ ...step, n: i + 1 })),
});

const each = (kind: Step['kind'], edit: Partial<Step>) =>
  changed((steps) => steps.map((step) => (step.kind === kind ? { ...step, ...edit } : step)));

it('finds nothing in a sound plan, mask and all', () => {
  expect(sound.steps.some((step) => step.kind === 'mask')).toBe(true);
  expect(describeBrokenRules(sound, limits)).toEqual([]);
});

it.each<[string, () => WashPlan]>([
  [
    'R1',
    () =>
      changed((steps) => [
        ...steps.filter((s) => s.kind !== 'mask'),
        ...steps.filter((s) => s.kind === 'mask'),
      ]),
  ],
  ['R1', () => each('mask', { paper: 'damp' })],
  [
    'R2',
    () =>
      changed((steps) => {
        const washes = steps.filter((s) => s.kind === 'wash').reverse();
        return steps.map((s) => (s.kind === 'wash' ? (washes.shift() as Step) : s));
      }),
  ],
  [
    'R2',
    () =>
      changed((steps) =>
        steps.map((s, i) =>
          i === steps.length - 1 ? { ...s, after: s.after.map(() => sound.paper) } : s,
        ),
      ),
  ],
  [
    'R3',
    () =>
      changed((steps) =>
        steps.map((s) => (s.key === 'wash/sheet/1' ? { ...s, slots: s.slots.slice(0, 1) } : s)),
      ),
  ],
  ['R5', () => changed((steps) => steps.filter((s) => s.kind !== 'dry'))],
  ['R5', () => each('wash', { paper: 'damp' })],
  ['R7', () => each('wash', { watch: '' })],
  ['R8', () => each('accents', { soften: 'the edge of the roof' })],
  [
    'R9',
    () =>
      changed((steps) =>
        steps.flatMap((s) => (s.key === 'wash/sheet/3' ? [s, { ...s, key: 'wash/sheet/4' }] : [s])),
      ),
  ],
  [
    'R11',
    () =>
      changed((steps) => [
        ...steps,
        { ...(steps.at(-1) as Step), kind: 'lift', key: 'lift/sheet/0', slots: [7] },
      ]),
  ],
  ['R12', () => changed((steps) => steps.filter((s) => s.kind !== 'unmask'))],
  ['R14', () => each('dry', { cautions: [] })],
  ['R15', () => each('wash', { prompt: '' })],
  ['R15', () => each('prepare', { prompt: 'x'.repeat(161) })],
  [
    'R21',
    () =>
      changed((steps) => [
        ...steps,
        { ...(steps.at(-1) as Step), kind: 'splatter', key: 'splatter/sheet/0', slots: [7] },
      ]),
  ],
  [
    'puddles',
    () => ({
      ...sound,
      mixes: sound.mixes.flatMap((m) => [
        m,
        { ...m, puddle: `${m.puddle}2` },
        { ...m, puddle: `${m.puddle}3` },
      ]),
    }),
  ],
  [
    'white',
    () =>
      changed((steps) =>
        steps.map((s) => ({ ...s, after: s.after.map(() => [40, 0, 0] as const) })),
      ),
  ],
])('finds %s broken', (rule, made) => {
  expect(
    describeBrokenRules(made(), { ...limits, hairDryer: true }).some((line) =>
      line.startsWith(rule),
    ),
  ).toBe(true);
});

it('says which shapes miss their value, from the difference a painter sees', () => {
  const sheet = sound.steps.at(-1)?.after ?? [];
  const missed = (by: number, share = 0.2): string[] => {
    const slots = sound.slots.map((slot, i) => (i === 3 ? { ...slot, share } : slot));
    const planned = sheet.map(([l, a, b], i) => [i === 3 ? l + by : l, a, b] as const);
    return checkRules({ ...sound, slots }, { ...limits, planned }).map(({ sentence }) =>
      words(sentence),
    );
  };
  for (const by of [0, 7.9, -7.9]) expect(missed(by)).toEqual([]);
  expect(missed(-9)).toEqual(['Some of these shapes end about one value lighter than planned.']);
  expect(missed(25)).toEqual(['Some of these shapes end about 2.5 values darker than planned.']);
  // So small a shape is not worth a word.
  expect(missed(25, 0.004)).toEqual([]);
});
