import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Layer } from '../../drawing/layers.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import { afterFrame, whenIdle } from './paint-later.ts';
import styles from './picture.module.css';

interface LayerCanvasProps {
  paint: Layer;
  size: PixelSize;
  shown: boolean;
  /** The next tap shows it: it lies over the picture unseen, so that the tap has only to let it be seen. */
  next: boolean;
  ahead: boolean;
}

/**
 * Painted beside the page and handed over whole: a canvas with a 2d context paints only when it is first
 * seen, and without a graphics processor it is copied anew for every frame.
 */
function paintOnto(canvas: HTMLCanvasElement, { width, height }: PixelSize, paint: Layer): boolean {
  const away = new OffscreenCanvas(width, height);
  const context = away.getContext('2d');
  const shown = canvas.getContext('bitmaprenderer');
  if (!context || !shown) return false;
  paint(context);
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
  shown.transferFromImageBitmap(away.transferToImageBitmap());
  return true;
}

/** One layer, painted when it is first needed and then only shown and hidden. */
export function LayerCanvas({ paint, size, shown, next, ahead }: LayerCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const painted = useRef<Layer | null>(null);
  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element || painted.current === paint || !(shown || next || ahead)) return;
    const draw = (): void => {
      if (painted.current !== paint && paintOnto(element, size, paint)) painted.current = paint;
    };
    if (shown && !painted.current) {
      draw(); // nothing to show until then
      return;
    }
    // What was tapped shows first that it was; then comes the picture, then what is painted ahead of need.
    return shown ? afterFrame(draw) : whenIdle(draw);
  });
  const place = next ? `${styles.layer} ${styles.next}` : styles.layer;
  return <canvas ref={canvas} class={place} hidden={!shown} />;
}
