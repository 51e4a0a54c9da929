import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { emptyBox } from '../../../app/core/paint/own-box.ts';
import { paintBox, paintCard } from '../../../app/core/paint/paint-box.ts';
import { centredCrop } from '../../../app/core/reference/reference.ts';
import { sheetOf } from '../../../app/core/reference/sheet.ts';
import { LookScreen } from '../../../app/screens/look/look-screen.tsx';
import { createPainting } from '../../../app/state/painting/intake.ts';
import { makeSmallStudy } from '../../../app/state/painting/make-small-study.ts';
import { openStore } from '../../../app/storage/open-store.ts';
import { madeStudy } from './made-study.ts';
import { shown } from './shown.ts';

async function photoOf(width: number, height: number): Promise<File> {
  const canvas = new OffscreenCanvas(width, height);
  canvas.getContext('2d')?.fillRect(0, 0, width, height);
  return new File([await canvas.convertToBlob({ type: 'image/jpeg' })], 'hill.jpg');
}

// A postcard is 148 x 105 mm: A6 of ISO 216:2007.
test('made over the same photo and kept; the photo lasts as long as one of the two does', async () => {
  const store = await openStore({ name: `small study ${Math.random()}` });
  const sheet = sheetOf('quarter', 'upright');
  const { painting, photo } = await createPainting(
    await photoOf(300, 600),
    sheet,
    {},
    async () => ({
      width: 300,
      height: 600,
    }),
  );
  await store.addPainting(painting, photo);
  const cards = signal(paintBox.map(paintCard));
  const ownBox = { box: signal(emptyBox), cards, open: async () => {} };
  const study = await makeSmallStudy({ store, ownBox }, painting);
  expect(await store.painting(study.id)).toEqual(study);
  expect(study.reference.sheet).toMatchObject({ widthMm: 105, heightMm: 148 });
  const whole = centredCrop({ width: 300, height: 600 }, study.reference.sheet);
  expect(study.reference.crop.size[0]).toBeLessThanOrEqual(whole.size[0] + 1e-9);
  await store.discard(painting.id);
  expect((await store.photo(photo.id))?.bytes.byteLength).toBe(photo.bytes.byteLength);
  cards.value = [];
  await expect(makeSmallStudy({ store, ownBox }, study)).rejects.toMatchObject({
    name: 'WishError', // its sentence is for her
    message: expect.stringMatching(/no paint/),
  });
  await store.discard(study.id);
  await expect(makeSmallStudy({ store, ownBox }, study)).rejects.toThrow();
  store.close();
});

test('offered under the values, not over a small study itself; a fault is said', async () => {
  const { studio } = await madeStudy();
  const asked: string[] = [];
  let fault: Error | null = null;
  const onSmallStudy = async ({ id }: { id: string }): Promise<void> => {
    asked.push(id);
    if (fault) throw fault;
  };
  const screen = shown(
    <LookScreen studio={studio} paintingId="made" onSmallStudy={onSmallStudy} />,
  );
  const offer = page.getByRole('button', { name: 'Small study first' });
  await offer.click();
  expect(asked).toEqual(['made']);
  fault = Object.assign(new Error('No paint is in your box.'), { name: 'WishError' });
  await offer.click();
  await expect.element(page.getByRole('alert')).toHaveTextContent('No paint is in your box.');
  const { value } = studio.painting;
  Object.assign(studio.painting, { value: value && { ...value, studyOf: 'other' } });
  await expect.element(offer).not.toBeInTheDocument();
  screen.leave();
});
