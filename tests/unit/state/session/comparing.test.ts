import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import type { Comparison } from '../../../../app/core/compare/comparison.ts';
import type { Step, WashPlan } from '../../../../app/core/plan/plan.ts';
import type { EventBody, SessionEvent } from '../../../../app/core/session/session-event.ts';
import { freshState } from '../../../../app/core/session/session-state.ts';
import { draftOf, noDraft } from '../../../../app/state/session/compare-draft.ts';
import { createComparing } from '../../../../app/state/session/comparing.ts';
import type { Desk } from '../../../../app/state/session/desk.ts';
import type { ComparedSheet, SheetRequest } from '../../../../workers/api.ts';
import { foundCorners, judgedSample } from '../../../support/compare/judged.ts';
import { plainStep } from '../../../support/session/plain-step.ts';
import { storeWithSession } from '../../../support/state/made-easel.ts';
import { faultOf, madePictures } from '../../../support/state/made-store.ts';
import { eventSample, planSample } from '../../../support/storage/kept-samples.ts';

/** GIF89a, one pixel: the smallest file that is a photo. */
const pixel = Uint8Array.of(
  ...[71, 73, 70, 56, 57, 97, 1, 0, 1, 0, 128, 0, 0, 0, 0, 0, 255, 255, 255],
  ...[44, 0, 0, 0, 0, 1, 0, 1, 0, 0, 2, 2, 68, 1, 0, 59],
);
const photo = (): Blob => new Blob([pixel]);

const wash = (n: number, key: string): Step => ({
  ...plainStep(n),
  key,
  kind: 'wash',
  after: [[60, 0, 0]],
});
const plan: WashPlan = {
  ...planSample('plan'),
  paper: [95, 0, 0],
  steps: [plainStep(1), wash(2, 'wash/sheet/1'), wash(3, 'wash/sheet/2')],
};
const desk = {
  plan,
  edges: [],
  seen: { reading: {}, slotMap: new Uint8Array(1) },
} as unknown as Desk;

interface Made {
  readonly answers?: readonly Comparison[];
  readonly inCharge?: boolean;
}

const pictures = {} as NonNullable<ComparedSheet['pictures']>;

async function made({ answers = [judgedSample()], inCharge = true }: Made = {}) {
  const store = await storeWithSession();
  const log = signal<readonly SessionEvent[]>([]);
  const tell = (...bodies: readonly EventBody[]): void => {
    if (!inCharge) return;
    const from = log.value.length;
    log.value = [...log.value, ...bodies.map((what, n) => eventSample('s', from + n, what))];
  };
  const asked: SheetRequest[] = [];
  const bitmaps: ReturnType<typeof madePictures>[] = [];
  const client = {
    async compare(leaving: AbortSignal, request: SheetRequest): Promise<ComparedSheet> {
      leaving.throwIfAborted();
      const comparison = answers[Math.min(asked.length, answers.length - 1)] as Comparison;
      asked.push(request);
      const own = madePictures();
      bitmaps.push(own);
      return { comparison, photo: own.reference, pictures: comparison.refused ? null : pictures };
    },
  };
  const session = signal({ ...freshState, doneKeys: ['wash/sheet/1'] });
  const easel = { desk: signal(desk), session, log, tell };
  const open = () => createComparing({ client, keepsakes: store, easel, sessionId: 's' });
  return { store, log, asked, bitmaps, open, comparing: open() };
}

const kinds = (log: readonly SessionEvent[]): string[] => log.map(({ what }) => what.kind);

test('a photo that can be judged comes into the record with its measures, once', async () => {
  const { comparing, log, store, asked } = await made();
  comparing.change({ wetness: 'dry' });
  await comparing.take(photo());
  expect(comparing.problem.value).toBeNull();
  expect(asked[0]).toMatchObject({ step: 2, wetness: 'dry', bare: [] });
  expect(kinds(log.value)).toEqual(['photo', 'compared']);
  const [line] = log.value;
  const photoId = line?.what.kind === 'photo' ? line.what.photoId : '';
  expect((await store.photo(photoId))?.bytes.byteLength).toBe(pixel.length);
  expect(comparing.draft.value).toMatchObject({ photoId, key: 'wash/sheet/1' });
  expect(comparing.isCurrent.value).toBe(true);
  // Only in the record now: it does not take room twice.
  expect((await store.photo('comparing s'))?.bytes.byteLength).toBe(0);
  await comparing.compare();
  expect(kinds(log.value)).toEqual(['photo', 'compared']);
});

test('one that could not be judged is kept to be tried again, and is in no record', async () => {
  const refused: Comparison = {
    ...{ engine: 'compare-1', step: 2, refused: 'not-sure' },
    place: { ...judgedSample().place, sureness: 'not sure' },
  };
  const { comparing, open, log, store, asked } = await made({
    answers: [refused, refused, judgedSample()],
  });
  comparing.change({ wetness: 'satin' });
  await comparing.take(photo());
  expect(kinds(log.value)).toEqual([]);
  expect(comparing.found.value?.comparison.refused).toBe('not-sure');
  expect(comparing.corners.value).toEqual(foundCorners);
  const hers = foundCorners.map(([x, y]) => [x + 0.01, y]) as unknown as typeof foundCorners;
  comparing.change({ corners: hers, bare: [[0.5, 0.5]] });
  await store.settled();
  // After a reload all of it is there.
  const again = open();
  await again.open();
  expect(again.draft.value).toMatchObject({ corners: hers, wetness: 'satin', bare: [[0.5, 0.5]] });
  expect(asked.at(-1)).toMatchObject({ corners: hers, wetness: 'satin' });
  expect(asked.at(-1)?.bare[0]?.[0]).toBeGreaterThan(0.3);
  await again.compare();
  expect(kinds(log.value)).toEqual(['photo', 'compared']);
});

test('told otherwise and compared again, the new measures stand beside the same photo', async () => {
  const whole = { ...judgedSample().whole, within4: 0.5 };
  const { comparing, log } = await made({ answers: [judgedSample(), judgedSample({ whole })] });
  comparing.change({ wetness: 'dry' });
  await comparing.take(photo());
  comparing.change({ key: 'wash/sheet/2' });
  expect(comparing.isCurrent.value).toBe(false);
  await comparing.compare();
  expect(kinds(log.value)).toEqual(['photo', 'compared', 'compared']);
});

test('in a window that is not in charge it is said that nothing came into the record', async () => {
  const { comparing, log } = await made({ inCharge: false });
  comparing.change({ wetness: 'dry' });
  await comparing.take(photo());
  expect(log.value).toEqual([]);
  expect(comparing.problem.value).toContain('another window');
});

test('what is no photo is refused in words; pictures looked at before are given back', async () => {
  const { comparing, bitmaps } = await made();
  comparing.change({ wetness: 'dry' });
  await comparing.take(photo());
  await comparing.take(new Blob(['a shopping list']));
  expect(comparing.problem.value).toBeTruthy();
  expect([comparing.work.value, comparing.found.value]).toEqual([null, null]);
  expect(bitmaps.map(({ reference }) => reference.closed)).toEqual([1]);
});

test('a fault of the worker is said in its own words', async () => {
  const { open, store } = await made();
  const broken = createComparing({
    client: { compare: () => Promise.reject(faultOf('PhotoError', 'This is too small.')) },
    keepsakes: store,
    easel: {
      desk: signal(desk),
      session: signal(freshState),
      log: signal([]),
      tell: () => undefined,
    },
    sessionId: 's',
  });
  broken.change({ wetness: 'dry' });
  await broken.take(photo());
  expect([broken.problem.value, broken.work.value]).toEqual(['This is too small.', null]);
  expect(open().steps.value.map(({ key }) => key)).toEqual(['wash/sheet/1', 'wash/sheet/2']);
});

test.each([null, 5, {}, { wetness: 'soaked', corners: [[0, 0]], bare: [[1]], photoId: 3 }])(
  'a draft that is spoilt is none (%j)',
  (kept) => {
    expect(draftOf(kept)).toEqual(noDraft);
  },
);
