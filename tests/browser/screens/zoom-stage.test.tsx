import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { wholePicture, type Zoom } from '../../../app/ui/picture/picture-zoom.ts';
import { ZoomStage } from '../../../app/ui/picture/zoom-stage.tsx';
import { type Shown, shown } from './shown.ts';

const tapped = vi.fn();
const zoom = signal<Zoom>(wholePicture);
let screen: Shown | null = null;

beforeEach(() => {
  zoom.value = wholePicture;
  screen = shown(
    <div style={{ width: '400px', height: '300px' }}>
      <ZoomStage zoom={zoom} ratio={2}>
        <button type="button" style={{ width: '100%', height: '100%' }} onClick={tapped}>
          picture
        </button>
      </ZoomStage>
    </div>,
  );
});

afterEach(() => {
  screen?.leave();
  tapped.mockReset();
});

const picture = () => page.getByRole('button', { name: 'picture', exact: true });
const bounds = () => picture().element().getBoundingClientRect();
const settled = () => expect.poll(() => bounds().width).toBeCloseTo(400 * zoom.value.scale, 0);

test('plus, minus, arrows and 0 while the picture has the focus', async () => {
  const outside = vi.fn();
  window.addEventListener('keydown', outside);
  await userEvent.keyboard('{Tab}');
  await userEvent.keyboard('{ArrowRight}');
  expect(zoom.value, 'whole: arrows are for others').toEqual(wholePicture);
  expect(outside).toHaveBeenCalledTimes(2);
  await userEvent.keyboard('++');
  await settled();
  expect(zoom.value.scale).toBeCloseTo(1.96, 5);
  await userEvent.keyboard('{ArrowRight}');
  expect(zoom.value.centre[0]).toBeGreaterThan(0.5);
  await userEvent.keyboard('-');
  expect(zoom.value.scale).toBeCloseTo(1.4, 5);
  await userEvent.keyboard('0');
  expect(zoom.value).toEqual(wholePicture);
  expect(outside).toHaveBeenCalledTimes(2); // none of these reached the easel
  window.removeEventListener('keydown', outside);
});

test('after a touch arrows go to the pedal’s actions, not to the picture', async () => {
  await userEvent.click(picture());
  await userEvent.keyboard('+');
  const { centre } = zoom.value;
  await userEvent.keyboard('{ArrowRight}');
  expect(zoom.value.centre).toEqual(centre);
});

test('the wheel zooms about the pointer; farther than whole it leaves the page its scrolling', async () => {
  const at = bounds();
  const wheel = (deltaY: number) => {
    const event = new WheelEvent('wheel', {
      deltaY,
      clientX: at.left + 100,
      clientY: at.top + 150,
      bubbles: true,
      cancelable: true,
    });
    picture().element().dispatchEvent(event);
    return event.defaultPrevented;
  };
  expect(wheel(300)).toBe(false);
  expect(wheel(-300)).toBe(true);
  expect(zoom.value.scale).toBeGreaterThan(1.5);
  await settled();
  const now = bounds();
  expect(now.left + now.width / 4).toBeCloseTo(at.left + 100, 0); // a quarter in, as before
});

test('one tap reaches the picture; Whole picture leads back', async () => {
  await userEvent.click(picture());
  expect(tapped).toHaveBeenCalledOnce();
  await expect.element(page.getByRole('button', { name: 'Whole picture' })).not.toBeInTheDocument();
  await userEvent.keyboard('+');
  await userEvent.click(page.getByRole('button', { name: 'Whole picture' }));
  expect(zoom.value).toEqual(wholePicture);
});
