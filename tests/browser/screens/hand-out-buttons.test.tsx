import { afterEach, expect, test, vi } from 'vitest';
import { page } from 'vitest/browser';
import { HandOutButtons } from '../../../app/ui/controls/hand-out-buttons.tsx';
import { type Shown, shown } from './shown.ts';

let screen: Shown | null = null;
afterEach(() => {
  screen?.leave();
  vi.unstubAllGlobals();
  for (const name of ['canShare', 'share']) Reflect.deleteProperty(navigator, name);
});

const png = new File(['a'], 'a.png', { type: 'image/png' });
const stub = (how: object): void => {
  for (const [name, value] of Object.entries(how))
    Object.defineProperty(navigator, name, { value, configurable: true });
};

test('pictures go to another app where this browser shares them', async () => {
  const share = vi.fn(async () => {});
  stub({ canShare: () => true, share });
  screen = shown(<HandOutButtons what="the photos" make={async () => [png]} />);
  await page.getByRole('button', { name: 'Hand on the photos' }).click();
  await expect.element(page.getByText('Handed on.')).toBeVisible();
  expect(share).toHaveBeenCalledWith({ files: [png], title: 'a.png' });
});

test('a sheet she closes says nothing; what can not be made is said', async () => {
  const closed = async () => {
    throw new DOMException('closed', 'AbortError');
  };
  stub({ canShare: () => true, share: closed });
  let files = [png];
  screen = shown(<HandOutButtons what="the photos" make={async () => files} />);
  const button = page.getByRole('button', { name: 'Hand on the photos' });
  await button.click();
  await expect.element(button).toBeEnabled();
  await expect.element(page.getByRole('status')).not.toBeInTheDocument();
  files = [];
  await button.click();
  await expect.element(page.getByRole('alert')).toHaveTextContent(/nothing to hand on/);
});

test('without a share sheet there is only the file', async () => {
  stub({ canShare: () => false });
  const save = vi.fn(async () => ({ createWritable: async () => new WritableStream() }));
  vi.stubGlobal('showSaveFilePicker', save);
  screen = shown(<HandOutButtons what="the photos" make={async () => [png]} />);
  await expect.element(page.getByRole('button', { name: /Hand on/ })).not.toBeInTheDocument();
  await page.getByRole('button', { name: 'Save the photos' }).click();
  await expect.element(page.getByText('Saved.')).toBeVisible();
  expect(save).toHaveBeenCalledWith({
    suggestedName: 'a.png',
    types: [{ accept: { 'image/png': ['.png'] } }],
  });
});
