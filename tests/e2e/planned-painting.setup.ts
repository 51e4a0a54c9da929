import { expect, test } from './support/app-page.ts';
import { smallPhoto } from './support/fixture-file.ts';
import { keepPlannedPainting } from './support/planned-painting.ts';
import { keptRows, planFor } from './support/walk.ts';

test('a painting is read, planned and kept, for the walks that begin at the easel', async ({
  page,
}) => {
  await page.goto('./');
  await planFor(page, smallPhoto);
  const one = { paintings: 1, photos: 1, cards: 1, readings: 1, plans: 1 };
  await expect.poll(() => keptRows(page)).toMatchObject(one);
  await keepPlannedPainting(page);
});
