import { canvasPixels } from '../support/canvas-pixels.ts';

/** The green channel, 0..255, of the picture on screen at shares of its width, half way down. */
export function shownGreens(shares: readonly number[]): number[] {
  const canvas = [
    ...document.querySelectorAll<HTMLCanvasElement>('[data-testid=picture] canvas'),
  ].find((each) => !each.hidden);
  if (!canvas) throw new Error('No picture is shown.');
  return shares.map((share) => {
    const x = Math.floor(share * canvas.width);
    return canvasPixels(canvas, [x, canvas.height >> 1, 1, 1])[1] ?? -1;
  });
}

/** A made-up pointer event at a share of an element's width and height. */
export function pointerOn(
  element: Element,
  kind: string,
  [x, y]: readonly [number, number],
  pointerType = 'touch',
): void {
  const place = element.getBoundingClientRect();
  element.dispatchEvent(
    new PointerEvent(kind, {
      pointerId: 1,
      pointerType,
      clientX: place.left + x * place.width,
      clientY: place.top + y * place.height,
      bubbles: true,
      cancelable: true,
    }),
  );
}
