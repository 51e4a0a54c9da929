import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import { emptyBox } from '../../../../app/core/paint/own-box.ts';
import type { PaintCard } from '../../../../app/core/paint/paint.ts';
import { paintBox, paintCard } from '../../../../app/core/paint/paint-box.ts';
import { makeSmallStudy } from '../../../../app/state/painting/make-small-study.ts';
import { paintingSample, photoSample } from '../../../support/storage/kept-samples.ts';

const painting = paintingSample('meadow', 'photo of it');
const photo = photoSample('photo of it');
const dark = paintBox.filter(({ id }) => id === 'pb27-prussian-blue').map(paintCard);

function made({ hasPhoto = true, cards = dark as readonly PaintCard[] } = {}) {
  const kept: unknown[][] = [];
  const shown = signal<readonly PaintCard[]>([]);
  const needs = {
    store: {
      photo: async (id: string) => (hasPhoto && id === 'photo of it' ? photo : null),
      addPainting: async (...row: unknown[]) => void kept.push(row),
    },
    ownBox: {
      box: signal({ ...emptyBox, owned: cards.map(({ id }) => id) }),
      cards: shown,
      // Her paints are known once her box is open.
      open: async () => {
        shown.value = cards;
      },
    },
  } as unknown as Parameters<typeof makeSmallStudy>[0];
  return { kept, study: () => makeSmallStudy(needs, painting) };
}

test('the study is kept over the photo of its painting, with a paint of hers', async () => {
  const { kept, study } = made();
  const found = await study();
  expect(found.studyOf).toBe('meadow');
  expect(kept).toEqual([[found, photo]]);
  expect(JSON.stringify(found.decisions)).toContain('pb27-prussian-blue');
});

test('without the photo, or without a paint, that is said and nothing is kept', async () => {
  for (const [needs, words] of [
    [{ hasPhoto: false }, /photo is not on this device/],
    [{ cards: [] }, /no paint to make a study with/],
  ] as const) {
    const { kept, study } = made(needs);
    await expect(study()).rejects.toMatchObject({
      name: 'WishError',
      message: expect.stringMatching(words),
    });
    expect(kept).toEqual([]);
  }
});
