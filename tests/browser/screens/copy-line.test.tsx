import { afterEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { CopyLine } from '../../../app/screens/start/copy-line.tsx';
import { findReminder } from '../../../app/state/backup/copy-reminder.ts';
import { openStore } from '../../../app/storage/open-store.ts';
import { paintingSample, photoSample } from '../../support/storage/kept-samples.ts';
import { type Shown, shown } from './shown.ts';

let screen: Shown | null = null;
afterEach(() => screen?.leave());

test('much that is here only is said in one line; put away it stays away, after a reload too', async () => {
  const store = await openStore({ name: `copy line ${Date.now()}` });
  for (const id of ['a', 'b', 'c'])
    await store.addPainting(
      paintingSample(id, `of ${id}`, Date.now() - 5),
      photoSample(`of ${id}`),
    );
  screen = shown(<CopyLine store={store} />);
  await expect.element(page.getByText('Your paintings are on this device only.')).toBeVisible();
  await expect
    .element(page.getByRole('link', { name: 'Keep a copy' }))
    .toHaveAttribute('href', '#/copies');
  await page.getByRole('button', { name: 'Not now' }).click();
  await expect.element(page.getByText(/on this device only/)).not.toBeInTheDocument();
  await store.settled();
  screen.leave();
  screen = shown(<CopyLine store={store} />);
  expect(await findReminder(store, Date.now())).toBeNull();
  await expect.element(page.getByText(/on this device only/)).not.toBeInTheDocument();
  store.close();
});
