import { expect, test, vi } from 'vitest';
import { page } from 'vitest/browser';
import { words } from '../../../app/core/words/plan/words.ts';
import { inSameWords } from '../../../app/screens/record/record-page.tsx';
import { RecordScreen } from '../../../app/screens/record/record-screen.tsx';
import type { RecordCalls } from '../../../app/state/painting/screen-calls.ts';
import { decodePhoto, largestAreaPx } from '../../../workers/photo/decode-photo.ts';
import { makePreview } from '../../../workers/photo/make-pictures.ts';
import { photoSample } from '../../support/storage/kept-samples.ts';
import { casePhoto } from '../support/case-photo.ts';
import { unturnedEngines } from '../support/unturned-engines.ts';
import { type MadeEasel, madeEasel } from './made-easel.ts';
import { madePlan } from './made-plan.ts';
import { shown } from './shown.ts';

const calls = {
  softBlend: () => Promise.reject(new Error('none here')),
} as unknown as RecordCalls;
const finish = (made: MadeEasel): void => {
  while (made.easel.running.value) {
    made.wait(0.1);
    made.easel.goOn();
  }
};

test('the record: how it dried, what happened, the history, and paint it again', async () => {
  await page.viewport(390, 844);
  const made = await madeEasel();
  made.goTo('dry');
  made.wait(4);
  made.easel.shineGone();
  const key = made.easel.step.value?.key ?? '';
  made.easel.tell({ kind: 'trouble', key, trouble: 'muddy', wetness: 'damp' });
  made.easel.tell({ kind: 'note', text: 'Less green next time.' });
  const photo = await casePhoto('exif-orient-6.jpg');
  const bytes = await photo.arrayBuffer();
  const { sessionId } = made.easel.desk.value ?? { sessionId: '' };
  await made.store.keepRecordPhoto(sessionId, { ...photoSample('sheet'), bytes }, key);
  made.easel.tell({ kind: 'photo', photoId: 'sheet', key });
  const [changed] = made.easel.record.value?.mixes ?? [];
  if (!changed) throw new Error('The plan has no mix.');
  made.easel.tell({ kind: 'mix-changed', mix: changed.id, parts: changed.parts, load: 2 });
  made.wait(56);
  const screen = shown(
    <RecordScreen easel={made.easel} keepsakes={made.store} calls={calls} paintingId="made" />,
  );
  await expect.element(page.getByRole('link', { name: 'Back to the easel' })).toBeVisible();
  finish(made);
  await expect.element(page.getByRole('link', { name: 'Paint it again' })).toBeVisible();
  for (const fold of document.querySelectorAll('main details'))
    (fold as HTMLDetailsElement).open = true;
  const region = (name: string) =>
    page
      .getByRole('heading', { name, exact: true })
      .element()
      .closest('details, section') as HTMLElement;
  expect(region('How it dried').innerText).toMatch(
    /4 min[\s\S]*expected[\s\S]*60 min[\s\S]*expected/,
  );
  expect(region('What went differently').innerText).toMatch(
    /It turns to mud[\s\S]*Less green next time/,
  );
  const picture = page.getByRole('button', { name: /^Large: photo at / });
  await expect.element(picture).toBeInTheDocument();
  picture.element().scrollIntoView(); // far down it is not even fetched
  await expect.poll(() => picture.element().querySelector('img')?.naturalWidth).toBeGreaterThan(0);
  const small = picture.element().clientWidth;
  await picture.click();
  await expect.poll(() => picture.element().clientWidth).toBeGreaterThan(1.5 * small);
  const title = words(made.easel.desk.value?.plan.steps.find((each) => each.key === key)?.title);
  expect(region('Photos on the way').innerText).toContain(title);
  expect(region('Mixes').innerText).toContain('as you changed it');
  await expect
    .poll(() => region('Drying times of all paintings').innerText)
    .toMatch(/(\d of|All) \d+ dried within the expected time/);
  const address = picture.element().querySelector('img')?.src ?? '';
  await made.paintAgain();
  expect(made.easel.record.value?.changedMixes).toContain(changed.id); // carried over
  screen.leave();
  const lasts = () =>
    fetch(address).then(
      () => true,
      () => false,
    );
  await expect.poll(lasts).toBe(false); // let go of: the browser may take a moment
  made.easel.leave();
  made.store.close();
});

test('her painting is asked for at the end, and stands beside the photo and the plan; earlier attempts in a row', async () => {
  await page.viewport(820, 1180);
  const made = await madeEasel();
  const record = (sessionId?: string) => (
    <RecordScreen
      easel={made.easel}
      keepsakes={made.store}
      calls={calls}
      paintingId="made"
      sessionId={sessionId}
    />
  );
  finish(made);
  const first = made.easel.desk.value?.sessionId ?? '';
  const screen = shown(record());
  await expect.element(page.getByText(/^Photograph your painting/)).toBeVisible();
  const input = document.querySelector<HTMLInputElement>('main input[type=file]');
  const files = new DataTransfer();
  files.items.add(new File([await casePhoto('exif-orient-6.jpg')], 'painting.jpg'));
  if (input) input.files = files.files;
  input?.dispatchEvent(new Event('change', { bubbles: true }));
  const painting = page.getByRole('img', { name: 'The painting' });
  await expect.element(painting).toBeVisible();
  await expect.element(page.getByText(/^Photograph your painting/)).not.toBeInTheDocument();
  const widths = [page.getByRole('img', { name: 'The photo' }), painting].map(
    (figure) => figure.element().getBoundingClientRect().width,
  );
  expect(widths[0]).toBeCloseTo(widths[1] ?? 0, 0);
  await expect
    .poll(() => document.querySelectorAll('[data-testid=record-page] :is(canvas, img)').length)
    .toBe(3);
  await expect.element(page.getByRole('region', { name: 'All attempts' })).not.toBeInTheDocument();

  await made.paintAgain();
  await expect.element(page.getByRole('region', { name: 'All attempts' })).toBeVisible();
  const attempts = page.getByRole('region', { name: 'All attempts' }).getByRole('link');
  await expect.poll(() => attempts.elements().length).toBe(2);
  await expect.element(attempts.nth(1)).toHaveAttribute('aria-current', 'page');
  await expect.element(attempts.nth(1)).toHaveTextContent(/The second.*under way/);
  await expect.element(attempts.nth(0)).toHaveAttribute('href', `#/painting/made/record/${first}`);
  screen.again(record(first)); // as the link leads there
  await expect.element(attempts.nth(0)).toHaveAttribute('aria-current', 'page');
  await expect.element(page.getByRole('link', { name: 'Paint it again' })).toBeVisible();
  await expect.element(painting).toBeVisible();
  screen.again(record()); // without a name it is the last one
  await expect.element(page.getByRole('link', { name: 'Back to the easel' })).toBeVisible();
  screen.leave();
  made.easel.leave();
  made.store.close();
});

test('the record is handed on as one picture of all three, the painting upright whatever the engine does', async () => {
  const made = await madeEasel();
  finish(made);
  const { sessionId, plan } = made.easel.desk.value ?? { sessionId: '' };
  const bytes = await (await casePhoto('exif-orient-6.jpg')).arrayBuffer();
  const key = plan?.steps.at(-1)?.key ?? '';
  await made.store.keepRecordPhoto(sessionId, { ...photoSample('sheet'), bytes }, key);
  made.easel.tell({ kind: 'photo', photoId: 'sheet', key });
  vi.stubGlobal('createImageBitmap', unturnedEngines['passes the wish over']);
  const openPhoto = async (_: AbortSignal, photo: Blob) => {
    const { bitmap, size } = await decodePhoto(photo, largestAreaPx);
    return { ...size, preview: makePreview(bitmap, size, 1600) };
  };
  const files: { name: string; picture: Promise<ImageBitmap> }[] = [];
  vi.stubGlobal('showSaveFilePicker', async ({ suggestedName }: { suggestedName: string }) => ({
    createWritable: async () => {
      const { readable, writable } = new TransformStream<Uint8Array>();
      const picture = new Response(readable).blob().then((png) => createImageBitmap(png));
      files.push({ name: suggestedName, picture });
      return writable;
    },
  }));
  const screen = shown(
    <RecordScreen
      easel={made.easel}
      keepsakes={made.store}
      calls={{ ...calls, openPhoto }}
      paintingId="made"
    />,
  );
  await page.getByRole('button', { name: 'Save the record as a picture' }).click();
  await expect.element(page.getByText('Saved.', { exact: true })).toBeVisible();
  expect(files[0]?.name).toMatch(/record\.png$/);
  const picture = await files[0]?.picture;
  expect(picture?.width).toBe(1800);
  expect(picture?.height).toBeGreaterThan(500);
  // A-ORI-1: upright it reaches the left of the third picture with its red bar; lying it would leave that grey.
  const context = new OffscreenCanvas(1, picture?.height ?? 1).getContext('2d');
  if (picture) context?.drawImage(picture, -1205, 0);
  const column = context?.getImageData(0, 0, 1, picture?.height ?? 1).data ?? [];
  let red = 0;
  for (let i = 0; i < column.length; i += 4)
    if ((column[i] ?? 0) > 150 && (column[i + 1] ?? 0) < 100) red++;
  expect(red).toBeGreaterThan(50);
  vi.unstubAllGlobals();
  screen.leave();
  made.easel.leave();
  made.store.close();
});

test('mixes told in the same words stand together, in the order of the first', async () => {
  const { mixes } = await madePlan();
  const [first, second, third] = mixes;
  if (!first || !second || !third) throw new Error('three mixes are wanted');
  const told = inSameWords([first, second, third], ({ id }) => (id === second.id ? 'B' : 'A'));
  expect(told).toEqual([
    ['A', [first, third]],
    ['B', [second]],
  ]);
});
