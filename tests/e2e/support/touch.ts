import type { CDPSession, Locator, Page } from '@playwright/test';
import { pressMs } from '../../../app/model/press.ts';
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
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', fingers: readonly Finger[]) =>
    session.send('Input.dispatchTouchEvent', {
      type,
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
    async press(target) {
      await glass.down(await middleOf(target));
      await passTime(page, pressMs + 20);
      await glass.up();
    },
  };
  return glass;
}
