import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import type { FramedColour } from '../../../../app/core/paint/measure/measured-photo.ts';
import type { DraftPatch, PaintMeasure } from '../../../../app/core/paint/measure/paint-measure.ts';
import type { OwnBox } from '../../../../app/core/paint/own-box.ts';
import type { PaintCard } from '../../../../app/core/paint/paint.ts';
import { createPaintMeasuring } from '../../../../app/state/paints/paint-measuring.ts';
import { keptSettings } from '../../../support/state/kept-settings.ts';
import { madeBox } from '../../../support/storage/made-backup.ts';

// What the worker answers is made here; frames, colours and figures are the test's own.

const framed = (n: number, l: number): FramedColour =>
  ({
    ...{ frame: { left: 0.2 * n, top: 0.5, width: 0.1, height: 0.1 } },
    ...{ lab: [l, 5, -10], evenness: 'even', ground: 'paper' },
  }) as unknown as FramedColour;
const found = [framed(1, 40), framed(2, 55), framed(3, 70), framed(4, 80)];
const draftOf = (is: DraftPatch['is'][]): DraftPatch[] =>
  is.map((each, n) => ({ frame: (found[n] as FramedColour).frame, is: each }));

const fitted: PaintMeasure = {
  ...{ K: new Array(36).fill(0.7), S: new Array(36).fill(0.2), sure: 0.8, why: 'Four steps.' },
  ...{ expected: [], misfit: 1, strength: 3, mostLoad: 20 },
} as unknown as PaintMeasure;
const card = (id = 'own-blue'): PaintCard =>
  ({ id, name: 'blue', ci: ['PB29'], properties: { transparency: 'T' } }) as unknown as PaintCard;

function made({ kept = new Map<string, unknown>(), fails = false } = {}) {
  const asked: { call: string; with: unknown[] }[] = [];
  const closed: number[] = [];
  const box = signal<OwnBox>(madeBox);
  const problem = signal<string | null>(null);
  let photos = 0;
  const answer = async <T>(call: string, value: T, ...given: unknown[]): Promise<T> => {
    asked.push({ call, with: given });
    if (fails) throw Object.assign(new Error('The photo cannot be read.'), { name: 'PhotoError' });
    return value;
  };
  const measuring = createPaintMeasuring({
    store: keptSettings(kept) as never,
    client: {
      openPhoto: (_signal: AbortSignal, file: Blob) => {
        const photo = photos++;
        return answer('openPhoto', { preview: { close: () => closed.push(photo) } }, file) as never;
      },
      measurePatches: (_signal: AbortSignal, ...given: unknown[]) =>
        answer('measurePatches', { patches: found, paper: [[0.9, 0.9]] }, ...given) as never,
      fitPaint: (_signal: AbortSignal, ...given: unknown[]) =>
        answer('fitPaint', fitted, ...given) as never,
    },
    ownBox: {
      box,
      problem,
      change: async (how: (box: OwnBox) => OwnBox) => {
        box.value = how(box.value);
      },
    } as never,
  });
  return { measuring, asked, closed, box, problem, kept };
}
const file = new Blob(['a photo']);

test('frames are found in a photo, named as a ladder and kept; the photo is shown with its bare paper', async () => {
  const { measuring, asked, kept } = made();
  await measuring.open('own-blue');
  const working = measuring.choosePhoto(file);
  expect(measuring.work.value).toMatch(/patches/);
  await working;
  expect([measuring.work.value, measuring.problem.value]).toEqual([null, null]);
  expect(asked.map(({ call }) => call)).toEqual(['openPhoto', 'measurePatches']);
  expect(asked[1]?.with).toEqual([file, null, null]); // frames are looked for
  expect(measuring.photo.value).toMatchObject({ file, paper: [[0.9, 0.9]] });
  const draft = measuring.drafts.value['own-blue'];
  expect(draft?.map(({ is }) => is?.kind)).toEqual(['step', 'step', 'step', 'step']);
  expect(kept.get('paint measure')).toEqual({ 'own-blue': draft });
});

test('frames she has are measured as they are, with the black line among them told', async () => {
  const mine = draftOf([
    { kind: 'step', amount: 16 },
    null,
    { kind: 'black' } as DraftPatch['is'],
    null,
  ]);
  const kept = new Map<string, unknown>([['paint measure', { 'own-blue': mine, other: [] }]]);
  const { measuring, asked } = made({ kept });
  await measuring.open('own-blue');
  await measuring.choosePhoto(file);
  expect(asked[1]?.with).toEqual([file, mine.map(({ frame }) => frame), 2]);
  expect(measuring.drafts.value['own-blue']).toEqual(mine);
  await measuring.findAgain();
  expect(asked.at(-1)?.with).toEqual([file, null, null]); // hers are let go
  expect(measuring.drafts.value['own-blue']).not.toEqual(mine);
  expect(measuring.drafts.value.other).toEqual([]);
});

test.each([
  ['words', 'frames'],
  ['nothing', null],
  ['a list that holds no frames', { 'own-blue': [{ is: null }] }],
  ['frames without a meaning', { 'own-blue': [{ frame: {} }] }],
  ['no list', { 'own-blue': {} }],
])('%s kept for frames counts as none', async (_, stored) => {
  const { measuring } = made({ kept: new Map([['paint measure', stored]]) });
  await measuring.open('own-blue');
  expect(measuring.drafts.value).toEqual({});
});

test('another row is taken for the ladder, and another name for a frame lets the result go', async () => {
  const { measuring } = made();
  await measuring.open('own-blue');
  await measuring.takeRow(0); // without a photo nothing is done
  expect(measuring.drafts.value).toEqual({});
  await measuring.choosePhoto(file);
  await measuring.measure(card());
  expect(measuring.result.value?.measure).toBe(fitted);
  await measuring.takeRow(0);
  expect(measuring.result.value).toBeNull();
  await measuring.measure(card());
  const named = draftOf([{ kind: 'step', amount: 8 }, null, null, null]);
  measuring.change(named);
  expect(measuring.result.value).toBeNull();
  expect(measuring.drafts.value['own-blue']).toEqual(named);
});

test('patches that are named are fitted, beside her other paints', async () => {
  const { measuring, asked, box } = made();
  await measuring.open('own-blue');
  await measuring.measure(card()); // no photo yet
  expect(asked).toEqual([]);
  await measuring.choosePhoto(file);
  measuring.change(
    draftOf([{ kind: 'step', amount: 16 }, null, { kind: 'step', amount: 4 }, null]),
  );
  await measuring.measure(card());
  const [patches, paint, own] = asked.at(-1)?.with ?? [];
  expect(patches).toEqual([
    { lab: [40, 5, -10], is: { kind: 'step', amount: 16 }, even: true },
    { lab: [70, 5, -10], is: { kind: 'step', amount: 4 }, even: true },
  ]);
  expect(paint).toEqual({ id: 'own-blue', ci: ['PB29'] });
  expect(own).toEqual([]); // its own former self is not asked
  expect(measuring.result.value?.patches).toEqual(patches);
  await measuring.measure(card('pb29'));
  expect(asked.at(-1)?.with[2]).toHaveLength(1);
  expect(box.value).toEqual(madeBox);
});

test('what was found goes into the box: of her own paint the optics, of a tube its strength too', async () => {
  const { measuring, box, closed, kept } = made();
  await measuring.open('own-blue');
  expect(await measuring.keep(card())).toBe(false); // nothing was measured
  await measuring.choosePhoto(file);
  await measuring.measure(card());
  expect(await measuring.keep(card())).toBe(true);
  const own = box.value.paints.at(-1);
  expect(own).toMatchObject({
    id: 'own-blue',
    name: 'my blue',
    K: fitted.K,
    S: fitted.S,
    strength: 2,
  });
  expect(own?.mostLoad).toBeUndefined();
  expect(own?.optics).toEqual({ from: 'measured', sure: 0.8, why: 'Four steps.' });
  expect(own?.revision).toBe(2);
  expect(box.value.strengthLessons?.[0]?.forgotten).toBeUndefined(); // a lesson of another paint
  expect(measuring.drafts.value).toEqual({});
  expect(kept.get('paint measure')).toEqual({});
  expect([measuring.photo.value, measuring.result.value, closed]).toEqual([null, null, [0]]);
});

test('a built-in paint that was measured becomes one of her own', async () => {
  const { measuring, box } = made();
  await measuring.open('pb29');
  await measuring.choosePhoto(file);
  await measuring.measure(card('pb29'));
  expect(await measuring.keep(card('pb29'))).toBe(true);
  const own = box.value.paints.at(-1);
  expect(own).toMatchObject({
    name: 'my blue',
    ci: ['PB29'],
    strength: 3,
    mostLoad: 20,
    revision: 1,
  });
  expect(own?.id).toMatch(/^own-/);
  expect(own?.properties).toEqual({ transparency: 'T' });
});

test('where the box cannot be kept, frames and result stay', async () => {
  const { measuring, problem } = made();
  await measuring.open('own-blue');
  await measuring.choosePhoto(file);
  await measuring.measure(card());
  problem.value = 'No room is left.';
  expect(await measuring.keep(card())).toBe(false);
  expect(measuring.result.value).not.toBeNull();
  expect(measuring.drafts.value['own-blue']).toHaveLength(4);
});

test('another paint lets photo and result go, the same one does not; so does another photo', async () => {
  const { measuring, closed } = made();
  await measuring.open('own-blue');
  await measuring.choosePhoto(file);
  await measuring.open('own-blue');
  expect([measuring.photo.value === null, closed]).toEqual([false, []]);
  await measuring.choosePhoto(file);
  expect(closed).toEqual([0]);
  await measuring.open('other');
  expect([measuring.photo.value, closed]).toEqual([null, [0, 1]]);
});

test('a photo that cannot be read is told in words, until she changes something', async () => {
  const { measuring } = made({ fails: true });
  await measuring.open('own-blue');
  await measuring.choosePhoto(file);
  expect([measuring.problem.value, measuring.work.value]).toEqual([
    'The photo cannot be read.',
    null,
  ]);
  measuring.change([]);
  expect(measuring.problem.value).toBeNull();
});
