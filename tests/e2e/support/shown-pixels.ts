import type { Page } from '@playwright/test';

export interface ShownPixels {
  /** Largest difference between the channels of any pixel, 0..255: 0 is neutral through and through. */
  readonly hue: number;
  /** Mean of the green channel, 0..255. */
  readonly green: number;
}

/** What the picture on screen shows now, from the pixels of its visible canvas. */
export const shownPixels = (page: Page): Promise<ShownPixels> =>
  page.evaluate(() => {
    const canvas = [
      ...document.querySelectorAll<HTMLCanvasElement>('[data-testid=picture] canvas'),
    ].find((each) => !each.hidden);
    if (!canvas) throw new Error('No picture is shown.');
    const context = new OffscreenCanvas(canvas.width, canvas.height).getContext('2d');
    if (!context) throw new Error('No canvas can be had here.');
    context.drawImage(canvas, 0, 0);
    const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
    let hue = 0;
    let green = 0;
    for (let i = 0; i < data.length; i += 4) {
      const [r, g, b] = [data[i] ?? 0, data[i + 1] ?? 0, data[i + 2] ?? 0];
      hue = Math.max(hue, Math.abs(r - g), Math.abs(g - b), Math.abs(r - b));
      green += g;
    }
    return { hue, green: green / (data.length / 4) };
  });
