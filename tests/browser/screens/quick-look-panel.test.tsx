import { expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { QuickLookPanel } from '../../../app/screens/easel/quick-look-panel.tsx';
import type { EaselViewState } from '../../../app/screens/easel/use-easel-view.ts';
import type { QuickLookCalls } from '../../../app/state/session/quick-look.ts';
import { shown } from './shown.ts';

const flat = (grey: number, width: number, height: number): Promise<ImageBitmap> => {
  const data = new Uint8ClampedArray(4 * width * height).map((_, i) => (i % 4 === 3 ? 255 : grey));
  return createImageBitmap(new ImageData(data, width, height));
};
const calls: QuickLookCalls = {
  openPhoto: async () => ({ width: 60, height: 80, preview: await flat(90, 60, 80) }),
  pictures: async () => ({ reference: await flat(90, 60, 80), grey: await flat(90, 60, 80) }),
};
const painted = (grey: number) => (context: OffscreenCanvasRenderingContext2D) => {
  context.fillStyle = `rgb(${grey} ${grey} ${grey})`;
  context.fillRect(0, 0, context.canvas.width, context.canvas.height);
};
const view = {
  layers: {
    value: {
      sheet: painted(200),
      'sheet-grey': painted(180),
      edges: painted(20),
      'edges-grey': painted(10),
    },
  },
} as unknown as EaselViewState;

const lookAt = async (kind: 'wash' | 'transfer') => {
  const screen = shown(
    <QuickLookPanel calls={calls} step={{ kind }} view={view} size={{ width: 80, height: 60 }} />,
  );
  (screen.host.querySelector('details') as HTMLDetailsElement).open = true;
  const input = screen.host.querySelector('input[type=file]') as HTMLInputElement;
  const files = new DataTransfer();
  files.items.add(new File(['photo'], 'sheet.jpg', { type: 'image/jpeg' }));
  input.files = files.files;
  input.dispatchEvent(new Event('change', { bubbles: true }));
  await expect.element(page.getByTestId('quick-look')).toBeVisible();
  return screen;
};

test('both are shown in grey, of one size, and both in colour after a tap on either', async () => {
  const screen = await lookAt('wash');
  const buttons = () => [...screen.host.querySelectorAll<HTMLElement>('[data-show]')];
  expect(buttons().map(({ dataset }) => dataset.show)).toEqual(['grey', 'sheet-grey']);
  const [own, planned] = [...screen.host.querySelectorAll('figure > :first-child')].map((each) =>
    each.getBoundingClientRect(),
  );
  expect([own?.width, own?.height]).toEqual([planned?.width, planned?.height]);
  buttons()[1]?.click();
  await expect
    .poll(() => buttons().map(({ dataset }) => dataset.show))
    .toEqual(['colour', 'sheet']);
  screen.leave();
});

test('while she draws it is the edges that stand beside her sheet', async () => {
  const screen = await lookAt('transfer');
  const shownNow = [...screen.host.querySelectorAll<HTMLElement>('[data-show]')].map(
    ({ dataset }) => dataset.show,
  );
  expect(shownNow).toEqual(['grey', 'edges-grey']);
  await expect.element(page.getByText('The edges to draw')).toBeVisible();
  screen.leave();
});
