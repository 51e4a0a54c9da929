import { expect, test } from './support/app-page.ts';
import { smallExample, smallPhoto } from './support/fixture-file.ts';
import { keepPlannedPainting } from './support/planned-painting.ts';
import { keptRows, planFor } from './support/walk.ts';

for (const [name, photo] of [
  ['small photo', async () => smallPhoto],
  ['small example', smallExample],
] as const)
  test(`the ${name} is read, planned and kept, for the walks that begin later`, async ({
    page,
  }) => {
    await page.goto('./');
    await planFor(page, await photo());
    const one = { paintings: 1, photos: 1, cards: 1, readings: 1, plans: 1 };
    await expect.poll(() => keptRows(page)).toMatchObject(one);
    await keepPlannedPainting(page, name);
  });
