import { useState } from 'preact/hooks';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { areaShare, shapeOf } from '../../../app/core/reference/move-crop.ts';
import { type Crop, centredCrop } from '../../../app/core/reference/reference.ts';
import { type Sheet, sheetOf } from '../../../app/core/reference/sheet.ts';
import { SheetScreen } from '../../../app/screens/sheet/sheet-screen.tsx';
import { type Shown, shown } from './shown.ts';

const photo = { width: 4000, height: 3000 };
const changes: { sheet: Sheet; crop: Crop }[] = [];
const done = vi.fn();
let screen: Shown;

function Keeper({ preview }: { preview: ImageBitmap }) {
  const first = sheetOf('quarter', 'across');
  const [kept, keep] = useState({ sheet: first, crop: centredCrop(photo, first) });
  return (
    <SheetScreen
      preview={preview}
      photo={photo}
      sheet={kept.sheet}
      crop={kept.crop}
      onChange={(sheet, crop) => {
        changes.push({ sheet, crop });
        keep({ sheet, crop });
      }}
      onDone={done}
      onCancel={() => undefined}
    />
  );
}

const last = (): { sheet: Sheet; crop: Crop } => {
  const change = changes.at(-1);
  if (!change) throw new Error('nothing was handed out');
  return change;
};
const stage = (): HTMLElement => page.getByTestId('cut-stage').element() as HTMLElement;

/** A pointer event at a share of the stage's width and height. */
function pointer(kind: string, pointerId: number, x: number, y: number): void {
  const place = stage().getBoundingClientRect();
  stage().dispatchEvent(
    new PointerEvent(kind, {
      pointerId,
      clientX: place.left + x * place.width,
      clientY: place.top + y * place.height,
      bubbles: true,
      cancelable: true,
    }),
  );
}

beforeEach(async () => {
  await page.viewport(1180, 820);
  changes.length = 0;
  done.mockReset();
  // Made-up pointers can't be captured by the browser; the gesture does without.
  vi.spyOn(HTMLElement.prototype, 'setPointerCapture').mockImplementation(() => undefined);
  const picture = new OffscreenCanvas(800, 600);
  picture.getContext('2d')?.fillRect(0, 0, 400, 600);
  screen = shown(<Keeper preview={picture.transferToImageBitmap()} />);
  await expect.element(page.getByTestId('cut-stage')).toBeVisible();
});
afterEach(() => {
  screen.leave();
  vi.restoreAllMocks();
});

test('says the sheet in words and takes another one, the cut keeping its shape', async () => {
  await expect
    // A full imperial sheet is 22 x 30 inches, a quarter half of each: common practice, no source.
    .element(page.getByText('Quarter imperial, across: 381 mm wide, 279 mm high (15 × 11 in).'))
    .toBeVisible();
  await page.getByRole('button', { name: /^A3/ }).click();
  expect(last().sheet).toEqual(sheetOf('a3', 'across'));
  expect(shapeOf(photo, last().crop)).toBeCloseTo(420 / 297, 6);
  await page.getByRole('button', { name: 'Upright' }).click();
  expect(last().sheet).toEqual(sheetOf('a3', 'upright'));
  expect(shapeOf(photo, last().crop)).toBeCloseTo(297 / 420, 6);
  await page.getByRole('button', { name: 'Use this part' }).click();
  expect(done).toHaveBeenCalledOnce();
});

test('her own size: comma and point are both decimal signs, nonsense is refused in words', async () => {
  await page.getByRole('button', { name: 'Other size' }).click();
  const width = page.getByRole('textbox', { name: 'Width' });
  const height = page.getByRole('textbox', { name: 'Height' });
  await userEvent.fill(width, '280,5');
  await userEvent.tab();
  expect(last().sheet).toEqual({ format: 'own', widthMm: 280.5, heightMm: 279 });
  await userEvent.fill(height, '200.5');
  await userEvent.keyboard('{Enter}');
  expect(last().sheet).toEqual({ format: 'own', widthMm: 280.5, heightMm: 200.5 });
  const count = changes.length;
  await userEvent.fill(height, '20');
  await userEvent.tab();
  await expect.element(page.getByRole('alert')).toHaveTextContent(/height is too small/);
  expect(changes).toHaveLength(count);
  await page.getByRole('button', { name: 'Use this part' }).click();
  expect(done).not.toHaveBeenCalled();
});

test('one finger moves the cut, and hands it out once, when it is lifted', async () => {
  await page.getByRole('button', { name: 'Upright' }).click();
  const count = changes.length;
  const before = last().crop;
  pointer('pointerdown', 1, 0.5, 0.5);
  pointer('pointermove', 1, 0.52, 0.5);
  pointer('pointermove', 1, 0.55, 0.5);
  expect(changes).toHaveLength(count);
  pointer('pointerup', 1, 0.55, 0.5);
  expect(changes).toHaveLength(count + 1);
  expect(last().crop.centre[0]).toBeGreaterThan(before.centre[0] + 0.02);
  expect(last().crop.size).toEqual(before.size);
});

test('two fingers drawing together make the cut smaller', () => {
  pointer('pointerdown', 1, 0.3, 0.5);
  pointer('pointerdown', 2, 0.7, 0.5);
  pointer('pointermove', 1, 0.4, 0.5);
  pointer('pointermove', 2, 0.6, 0.5);
  pointer('pointerup', 1, 0.4, 0.5);
  expect(changes).toHaveLength(0);
  pointer('pointerup', 2, 0.6, 0.5);
  const whole = centredCrop(photo, sheetOf('quarter', 'across'));
  expect(areaShare(last().crop) / areaShare(whole)).toBeCloseTo(0.25, 5);
});

test('a pull at a corner sizes the cut about its centre', async () => {
  const card = page.getByTestId('upper-card').element(); // begins at its inner corner
  const [x, y] = (card.getAttribute('d') ?? '').slice(1).split(/[ L]/).map(Number);
  const { clientWidth, clientHeight } = stage();
  const [left, top] = [(x ?? 0) / clientWidth, (y ?? 0) / clientHeight];
  pointer('pointerdown', 1, left, top);
  pointer('pointermove', 1, (left + 0.5) / 2, (top + 0.5) / 2); // half way to the centre
  pointer('pointerup', 1, (left + 0.5) / 2, (top + 0.5) / 2);
  const whole = centredCrop(photo, sheetOf('quarter', 'across'));
  expect(last().crop.size[0] / whole.size[0]).toBeCloseTo(0.5, 2);
  expect(last().crop.centre).toEqual([0.5, 0.5]);
});

test('a gesture the browser takes away changes nothing', () => {
  pointer('pointerdown', 1, 0.3, 0.5);
  pointer('pointerdown', 2, 0.7, 0.5);
  pointer('pointermove', 2, 0.5, 0.5);
  pointer('pointercancel', 2, 0.5, 0.5);
  pointer('pointermove', 1, 0.4, 0.5);
  pointer('pointerup', 1, 0.4, 0.5);
  expect(changes).toHaveLength(0);
});

test('a real mouse drags the cut', async () => {
  vi.restoreAllMocks();
  await page.getByRole('button', { name: 'Upright' }).click();
  const before = last().crop;
  await userEvent.dragAndDrop(page.getByTestId('cut-stage'), page.getByTestId('cut-stage'), {
    sourcePosition: { x: 300, y: 300 },
    targetPosition: { x: 260, y: 300 },
  });
  expect(last().crop.centre[0]).toBeLessThan(before.centre[0]);
});

test('all by keys: arrows, size, straighten, turn', async () => {
  stage().focus();
  await userEvent.keyboard('-');
  const smaller = last().crop;
  expect(smaller.size[0]).toBeLessThan(1);
  await userEvent.keyboard('{ArrowRight}');
  expect(last().crop.centre[0]).toBeGreaterThan(0.5);
  await userEvent.keyboard('{ArrowLeft}');
  expect(last().crop.centre[0]).toBeCloseTo(0.5, 9);
  await userEvent.keyboard('{ArrowDown}');
  expect(last().crop.centre[1]).toBeGreaterThan(0.5);
  await userEvent.keyboard('+');
  expect(last().crop.size[0]).toBeGreaterThan(smaller.size[0]);
  await userEvent.keyboard('...');
  expect(last().crop.turn).toBeCloseTo(1.5, 9);
  await userEvent.keyboard(',,,,');
  expect(last().crop.turn).toBeCloseTo(359.5, 9);
  await userEvent.keyboard('t');
  expect(last().crop.turn).toBeCloseTo(89.5, 9);
  expect(last().sheet).toEqual({ format: 'quarter', widthMm: 279, heightMm: 381 });
});

test('sliders size and straighten; Largest brings the whole cut back', async () => {
  const size = page.getByRole('slider', { name: 'Size of the crop' });
  await userEvent.fill(size, '60');
  expect(last().crop.size[0]).toBeCloseTo(0.6, 6);
  await userEvent.fill(page.getByRole('slider', { name: 'Straighten' }), '-4');
  expect(last().crop.turn).toBeCloseTo(356, 9);
  await expect.element(page.getByText('4° to the left')).toBeVisible();
  await page.getByRole('button', { name: 'Largest' }).click();
  const whole = centredCrop(photo, sheetOf('quarter', 'across'), 356);
  expect(last().crop.size[0]).toBeCloseTo(whole.size[0], 9);
});
