import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { CopiesScreen } from '../../../app/screens/copies/copies-screen.tsx';
import { openStore, type Store } from '../../../app/storage/open-store.ts';
import { paintingSample, photoSample } from '../../support/storage/kept-samples.ts';
import { type Shown, shown } from './shown.ts';

let screen: Shown | null = null;
afterEach(() => screen?.leave());
beforeEach(() => page.viewport(390, 844));

let made = 0;
async function storeOf(...titles: string[]): Promise<Store> {
  const store = await openStore({ name: `copies ${Date.now()} ${made++}` });
  for (const title of titles)
    await store.addPainting(
      { ...paintingSample(`id of ${title}`, `photo of ${title}`, 5), title },
      photoSample(`photo of ${title}`),
    );
  return store;
}

async function copyOf(store: Store): Promise<File> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const sink = new WritableStream<Uint8Array>({
    write: (chunk) => void parts.push(new Uint8Array(chunk)),
  });
  const wish = { scope: { kind: 'everything' }, places: false, app: '', madeAt: 5 } as const;
  await (await store.backups()).write(new AbortController().signal, wish, sink);
  return new File(parts, 'a copy.zip', { type: 'application/zip' });
}

function show(store: Store, { what = '', arrived = signal<File | null>(null) } = {}) {
  const onBrought = vi.fn(async () => {});
  const needs = { store, onBrought, arrived, inSessionAnywhere: async () => false, what };
  screen = shown(<CopiesScreen {...needs} />);
  return { onBrought };
}

const button = (name: string) => page.getByRole('button', { name, exact: true });
const bring = (file: File) => userEvent.upload(page.getByLabelText('Copy to bring back'), file);
const titles = async (store: Store) => (await store.cards()).map(({ title }) => title).sort();

test('what goes into a copy is chosen; what was made is named with what it holds', async () => {
  const store = await storeOf('seed heads', 'last light');
  show(store);
  await button('Make the copy').click();
  await expect.element(page.getByText(/: 2 paintings, under 1 MB, read through/)).toBeVisible();
  await page.getByLabelText('What goes into it').selectOptions('seed heads');
  await button('Make another').click();
  await expect.element(page.getByText(/^Firstwash seed heads \d/)).toBeVisible();
  await expect.element(page.getByText(/: 1 painting, under 1 MB, read through/)).toBeVisible();
  store.close();
});

test('a copy is told of before anything is done, and joined with what is here', async () => {
  const copy = await copyOf(await storeOf('seed heads', 'last light'));
  const store = await storeOf('seed heads', 'a barn');
  const { onBrought } = show(store);
  await bring(copy);
  await expect.element(page.getByText('last light: not here yet, comes back.')).toBeVisible();
  await expect.element(page.getByText('seed heads: here already, the same.')).toBeVisible();
  expect(await titles(store)).toEqual(['a barn', 'seed heads']);
  await button('Bring it back').click();
  await expect.element(page.getByText(/It is all here/)).toBeVisible();
  expect(await titles(store)).toEqual(['a barn', 'last light', 'seed heads']);
  expect(onBrought).toHaveBeenCalledOnce();
  store.close();
});

test('what is here is replaced only after it was said what goes, and asked again', async () => {
  const copy = await copyOf(await storeOf('seed heads'));
  const store = await storeOf('a barn');
  show(store);
  await bring(copy);
  await button('Replace all that is here').click();
  await expect
    .element(page.getByText(/One painting that is only here would be deleted/))
    .toBeVisible();
  await button('Leave it').click();
  expect(await titles(store)).toEqual(['a barn']);
  await button('Replace all that is here').click();
  await button('Replace').click();
  await expect.element(page.getByText(/It is all here/)).toBeVisible();
  expect(await titles(store)).toEqual(['seed heads']);
  store.close();
});

test('a copy that is damaged is refused in one sentence', async () => {
  const copy = await copyOf(await storeOf('seed heads'));
  const store = await storeOf('a barn');
  show(store);
  await bring(new File([copy.slice(0, copy.size - 40)], 'half.zip'));
  await expect.element(page.getByRole('alert')).toHaveTextContent(/^This copy is damaged/);
  expect(await titles(store)).toEqual(['a barn']);
  store.close();
});

test('a copy that came in from outside is looked through at once; what goes into one can be set', async () => {
  const copy = await copyOf(await storeOf('seed heads'));
  const store = await storeOf('a barn');
  const arrived = signal<File | null>(copy);
  show(store, { arrived, what: 'id of a barn' });
  await expect.element(page.getByText('seed heads: not here yet, comes back.')).toBeVisible();
  expect(arrived.value).toBeNull();
  await expect.element(page.getByLabelText('What goes into it')).toHaveValue('id of a barn');
  store.close();
});
