import { afterEach, expect, test, vi } from 'vitest';
import { page } from 'vitest/browser';
import { lazyScreen } from '../../../app/ui/layout/lazy-screen.tsx';
import { shown } from './shown.ts';

let leave = (): void => {};
afterEach(() => {
  leave();
  vi.restoreAllMocks();
});

const Here = () => <main>Here it is.</main>;

/** A screen that comes with the given fetch; the page has a main element whatever comes. */
function later(fetched: () => Promise<typeof Here>): void {
  const Later = lazyScreen(fetched);
  leave = shown(<Later />).leave;
  expect(document.querySelectorAll('main')).toHaveLength(1);
}

test('without a connection: it is said, and trying again brings the screen', async () => {
  vi.spyOn(navigator, 'onLine', 'get').mockReturnValue(false);
  let there = false;
  later(async () => {
    if (!there) throw new TypeError('not fetched');
    return Here;
  });
  await expect.element(page.getByRole('alert')).toHaveTextContent(/not on this device yet/);
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect.element(page.getByRole('alert')).toHaveTextContent(/not on this device yet/);
  there = true;
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect.element(page.getByText('Here it is.')).toBeVisible();
});

test('with a connection its files are gone for a newer version: only loading again helps, and says so', async () => {
  vi.spyOn(navigator, 'onLine', 'get').mockReturnValue(true);
  later(() => Promise.reject(new TypeError('not fetched')));
  await expect
    .element(page.getByRole('alert'))
    .toHaveTextContent(/newer version.*Load the page again/);
  await expect.element(page.getByRole('button', { name: 'Load it again' })).toBeVisible();
  await expect.element(page.getByRole('button', { name: 'Try again' })).not.toBeInTheDocument();
});
