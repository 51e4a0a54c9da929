import type { CDPSession, Locator, Page } from '@playwright/test';
import { pressMs } from '../../../app/ui/pointer/press.ts';
import { passTime } from './easel-walk.ts';

export interface Finger {
  readonly x: number;
  readonly y: number;
  /** Half the width of the area touched, CSS px: a fingertip's when left out. */
  readonly radius?: number;
}

export interface Glass {
  down(...fingers: readonly Finger[]): Promise<void>;
  move(...fingers: readonly Finger[]): Promise<void>;
  up(): Promise<void>;
  tap(finger: Finger): Promise<void>;
  /** Two taps a tenth of a second apart, however slow the machine is; not to be taken for one with those before. */
  tapTwice(finger: Finger): Promise<void>;
  /** A finger held on it long enough to act. */
  press(target: Locator): Promise<void>;
}

export async function middleOf(target: Locator): Promise<Finger> {
  const box = await target.boundingBox();
  if (!box) throw new Error(`${target} is not on screen.`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Real touches, as the browser gets them from the device. */
export async function glassOf(page: Page): Promise<Glass> {
  const session: CDPSession = await page.context().newCDPSession(page);
  type Kind = 'touchStart' | 'touchMove' | 'touchEnd';
  const send = (type: Kind, fingers: readonly Finger[], timestamp?: number) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      ...(timestamp !== undefined && { timestamp }),
      touchPoints: fingers.map(({ x, y, radius = 12 }, id) => ({
        x,
        y,
        id,
        radiusX: radius,
        radiusY: radius,
      })),
    });
  const glass: Glass = {
    down: async (...fingers) => void (await send('touchStart', fingers)),
    move: async (...fingers) => void (await send('touchMove', fingers)),
    up: async () => void (await send('touchEnd', [])),
    async tap(finger) {
      await glass.down(finger);
      await glass.up();
    },
    async tapTwice(finger) {
      await page.waitForTimeout(400); // more than a double tap takes (use-zoom-gesture.ts)
      const start = Date.now() / 1000;
      for (const after of [0, 0.1]) {
        await send('touchStart', [finger], start + after);
        await send('touchEnd', [], start + after + 0.05);
      }
    },
    async press(target) {
      await glass.down(await middleOf(target));
      await passTime(page, pressMs + 20);
      await glass.up();
    },
  };
  return glass;
}
