import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Advice } from '../../../app/core/compare/comparison.ts';
import type { Corners } from '../../../app/core/compare/homography.ts';
import { ComparedChoices, firstView } from '../../../app/screens/compare/compared-choices.tsx';
import { ComparedPicture } from '../../../app/screens/compare/compared-picture.tsx';
import { CornerStage } from '../../../app/screens/compare/corner-stage.tsx';
import type { OpenedReading } from '../../../app/state/painting/opened-reading.ts';
import { foundCorners } from '../../support/compare/judged.ts';
import { shown } from './shown.ts';

const flat = (grey: number, width = 80, height = 60): Promise<ImageBitmap> => {
  const data = new Uint8ClampedArray(4 * width * height).map((_, i) => (i % 4 === 3 ? 255 : grey));
  return createImageBitmap(new ImageData(data, width, height));
};

const boxed = { width: '400px', height: '300px' };

async function corners() {
  const photo = await flat(120, 400, 300);
  const now = signal<Corners>(foundCorners);
  const spots: (readonly [number, number])[] = [];
  const Shown = ({ sets }: { sets: 'corners' | 'bare' }) => (
    <div style={boxed}>
      <CornerStage
        {...{ photo, sets }}
        corners={now.value}
        bare={spots}
        chosen={0}
        onChoose={() => undefined}
        onCorners={(next) => {
          now.value = next;
        }}
        onBare={(spot) => spots.push(spot)}
      />
    </div>
  );
  return { now, spots, Shown };
}

test('a corner is drawn by a finger and stays under it, with a magnifier as long as it is held', async () => {
  const { now, Shown } = await corners();
  const screen = shown(<Shown sets="corners" />);
  const handle = screen.host.querySelector('button') as HTMLElement;
  const { left, top, width, height } = handle.getBoundingClientRect();
  const [x, y] = [left + width / 2 + 5, top + height / 2 - 4]; // not quite in its middle
  const over = screen.host.querySelector('[data-testid=corner-stage]') as HTMLElement;
  const area = over.getBoundingClientRect();
  const send = (kind: string, clientX: number, clientY: number): void => {
    const init = { pointerId: 1, bubbles: true, isPrimary: true, pointerType: 'touch' };
    handle.dispatchEvent(new PointerEvent(kind, { ...init, clientX, clientY }));
  };
  handle.setPointerCapture = () => undefined;
  const [before] = now.value;
  send('pointerdown', x, y);
  await expect.element(page.getByTestId('magnifier')).toBeVisible();
  send('pointermove', x + 0.1 * area.width, y + 0.2 * area.height);
  expect(now.value[0][0]).toBeCloseTo(before[0] + 0.1, 5);
  expect(now.value[0][1]).toBeCloseTo(before[1] + 0.2, 5);
  send('pointerup', x + 0.1 * area.width, y + 0.2 * area.height);
  await expect.poll(() => screen.host.querySelector('[data-testid=magnifier]')).toBeNull();
  expect(now.value.slice(1)).toEqual(foundCorners.slice(1));
  screen.leave();
});

test('arrow keys move a corner, with Shift farther; never off the photo', async () => {
  const { now, Shown } = await corners();
  const screen = shown(<Shown sets="corners" />);
  (screen.host.querySelectorAll('button')[1] as HTMLElement).focus();
  await userEvent.keyboard('{ArrowLeft}{ArrowDown}');
  expect(now.value[1][0]).toBeCloseTo(0.899, 6);
  expect(now.value[1][1]).toBeCloseTo(0.121, 6);
  await userEvent.keyboard('{Shift>}{ArrowRight}{ArrowRight}{/Shift}');
  expect(now.value[1][0]).toBeCloseTo(0.919, 6);
  for (let n = 0; n < 15; n++) await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}');
  expect(now.value[1][1]).toBe(0);
  screen.leave();
});

test('bare paper is shown by a touch, or by a cross and Enter', async () => {
  const { spots, Shown } = await corners();
  const screen = shown(<Shown sets="bare" />);
  (screen.host.querySelector('[data-testid=place-stage]') as HTMLElement).focus();
  await userEvent.keyboard('{Shift>}{ArrowLeft}{/Shift}{Enter}');
  expect(spots).toEqual([[0.45, 0.5]]);
  screen.leave();
});

const planes = (lightness: number) => {
  const plane = (value: number) => new Float32Array(80 * 60).fill(value);
  const none = new Uint8Array(80 * 60);
  return { lightness: plane(lightness), a: plane(0), b: plane(0), states: none };
};

async function compared() {
  const seen = { reference: await flat(10), grey: await flat(20) } as unknown as OpenedReading;
  const pictures = {
    size: { width: 80, height: 60 },
    slotMap: new Uint8Array(80 * 60),
    shapes: new Int32Array(80 * 60),
    expected: new Uint8ClampedArray(4 * 80 * 60).fill(200),
    measured: planes(50),
  };
  const view = signal(firstView);
  const advice: Advice = {
    ...{ mending: 'glaze', weight: 1, slot: 0, shapes: [0], at: [0.5, 0.5], share: 1 },
    ...{ difference: 9, drift: [], measured: [50, 0, 0], expected: [40, 0, 0] },
    predicted: [40, 0, 0],
  };
  const Shown = () => (
    <>
      <div style={boxed}>
        <ComparedPicture {...{ seen, pictures, view, advice }} pointed={false} />
      </div>
      <ComparedChoices view={view} mended />
    </>
  );
  const screen = shown(<Shown />);
  const shows = () => page.getByTestId('compared').element().getAttribute('data-shows');
  return { screen, view, shows };
}

test('the line goes by keys and by buttons, and a tap on the picture is grey', async () => {
  const { screen, view, shows } = await compared();
  await expect.poll(shows).toBe('planned painting');
  (screen.host.querySelector('[data-testid=split-stage]') as HTMLElement).focus();
  await userEvent.keyboard('{ArrowLeft}');
  expect(view.value.split).toBeCloseTo(0.48, 6);
  await page.getByRole('button', { name: 'Line to the right' }).click();
  expect(view.value.split).toBeCloseTo(0.58, 6);
  await page.getByTestId('split-stage').click();
  await expect.poll(shows).toBe('planned-grey painting-grey');
  screen.leave();
});

test('blinking shows one after the other, by hand and by itself; mended stands beside now', async () => {
  const { screen, view, shows } = await compared();
  await page.getByRole('button', { name: 'Now, then' }).click();
  await expect.poll(shows).toBe('painting mended');
  await page.getByRole('button', { name: 'Blink' }).click();
  await page.getByRole('button', { name: 'Show your painting', exact: true }).click();
  expect(view.value.second).toBe(false);
  await page.getByRole('button', { name: 'By itself' }).click();
  await expect.poll(() => view.value.second).toBe(true);
  await expect.poll(() => view.value.second).toBe(false);
  screen.leave();
});
