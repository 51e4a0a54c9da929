import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page } from 'vitest/browser';
import { StartScreen } from '../../../app/screens/start/start-screen.tsx';
import type { App } from '../../../app/state/create-app.ts';
import type { PaintingCard } from '../../../app/state/painting/shelf.ts';
import { type Shown, shown } from './shown.ts';

const card = (id: string, changed: Partial<PaintingCard> = {}): PaintingCard => ({
  id,
  title: id,
  picture: '',
  place: 'plan ready',
  stage: 'plan',
  ...changed,
});

let screen: Shown | null = null;
afterEach(() => screen?.leave());
beforeEach(() => page.viewport(390, 844));

function show(cards: readonly PaintingCard[], changed: object = {}, shelf: object = {}) {
  const goOn = vi.fn();
  const remove = vi.fn(async () => {});
  const app = {
    shelf: {
      paintings: signal(cards),
      more: signal(0),
      showMore: async () => {},
      last: signal(cards.find(({ stage }) => stage !== 'damaged') ?? null),
      removed: signal(null),
      candidates: signal(0),
      keeping: signal('There is no account and no server.'),
      problem: signal<string | null>(null),
      refresh: async () => {},
      remove,
      ...shelf,
    },
    intake: { problem: signal(null), busy: signal(false), examplePicture: '' },
    updates: { offlineReady: signal(false) },
    storagePromised: signal<boolean | null>(null),
    browserProblem: null,
    goOn,
    ...changed,
  };
  screen = shown(<StartScreen app={app as unknown as App} />);
  return { goOn, remove, host: screen.host };
}

test('a long name without blanks does not widen the page', async () => {
  const long = 'W'.repeat(400);
  show([card('a', { title: long }), card('b', { title: long })]);
  await expect.element(page.getByRole('region', { name: 'Paintings' })).toBeVisible();
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
});

test('a damaged painting is marked, can not be opened, and can be taken away', async () => {
  const damaged = card('hurt', { stage: 'damaged', place: 'damaged: it can’t be opened' });
  const { goOn, remove } = show([damaged, card('healthy')]);
  await expect.element(page.getByRole('button', { name: /^hurt/ })).toBeDisabled();
  await expect
    .element(page.getByRole('link', { name: 'Save what is left' }))
    .toHaveAttribute('href', '#/copies/hurt');
  await page.getByRole('button', { name: 'Continue healthy' }).click();
  expect(goOn).toHaveBeenCalledWith(expect.objectContaining({ id: 'healthy' }));
  await page.getByRole('button', { name: 'Remove hurt' }).click();
  await page.getByRole('button', { name: 'Remove', exact: true }).click();
  expect(remove).toHaveBeenCalledWith('hurt');
});

test('what the wall could not do, and what the browser lacks, are said', async () => {
  show([], { browserProblem: 'Too old.' }, { problem: signal('Not to be read.') });
  await expect.element(page.getByText('Not to be read.')).toBeVisible();
  await expect.element(page.getByText('Too old.')).toBeVisible();
});

test('what the browser promised is told, a refusal only where there is something to lose', async () => {
  show([], { storagePromised: signal(false), updates: { offlineReady: signal(true) } });
  await expect.element(page.getByText('Ready to use without a connection.')).toBeVisible();
  await expect.element(page.getByText(/may clear them/)).not.toBeInTheDocument();
  screen?.leave();
  show([card('a')], { storagePromised: signal(false) });
  await expect
    .element(page.getByText(/may clear them.* for a week: .*About.*says how/))
    .toBeVisible();
  screen?.leave();
  show([card('a')], { storagePromised: signal(true) });
  await expect.element(page.getByText('The browser has promised to keep them.')).toBeVisible();
});

test('the rest of a long wall is hung when its end comes into sight', async () => {
  const showMore = vi.fn(async () => {});
  const many = Array.from({ length: 40 }, (_, i) => card(`painting ${i}`));
  show(many, {}, { more: signal(12), showMore });
  const end = page.getByRole('button', { name: 'Show 12 more' });
  await expect.element(end).toBeInTheDocument();
  expect(showMore).not.toHaveBeenCalled();
  end.element().scrollIntoView();
  await expect.poll(() => showMore.mock.calls.length).toBeGreaterThan(0);
});

test('with a mouse a photo is chosen first, on a phone or tablet the camera comes first', async () => {
  for (const mouse of [true, false]) {
    const media = vi
      .spyOn(window, 'matchMedia')
      .mockReturnValue({ matches: mouse } as MediaQueryList);
    show([]);
    media.mockRestore();
    const isFilled = (element: Element): boolean =>
      getComputedStyle(element).backgroundColor !== 'rgba(0, 0, 0, 0)';
    const choose = page.getByRole('button', { name: 'Choose a photo' });
    await expect.element(choose).toBeVisible();
    expect(isFilled(choose.element())).toBe(mouse);
    expect(isFilled(page.getByRole('link', { name: 'Camera' }).element())).toBe(!mouse);
    screen?.leave();
  }
});
