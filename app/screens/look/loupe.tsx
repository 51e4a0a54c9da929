import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Point } from '../../model/lab.ts';
import type { PictureTurn } from '../common/picture.tsx';
import styles from './loupe.module.css';
import { turnedPoint } from './spot-of-event.ts';

/** Side of the glass in its own px, and how many px of the picture it shows. */
const sidePx = 224;
const shownPx = 72;

interface LoupeProps {
  bitmap: ImageBitmap;
  /** 0..1 of the picture. */
  spot: Point;
  turn: PictureTurn;
}

/** The spot enlarged, beside the finger and never under it. */
export function Loupe({ bitmap, spot, turn }: LoupeProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [x, y] = turnedPoint(spot, turn);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context || bitmap.width === 0) return; // a bitmap already handed back is 0 wide
    const zoom = sidePx / shownPx;
    context.resetTransform();
    context.clearRect(0, 0, sidePx, sidePx);
    context.imageSmoothingEnabled = false;
    context.translate(sidePx / 2, sidePx / 2);
    context.scale(turn.mirrored !== turn.upsideDown ? -zoom : zoom, turn.upsideDown ? -zoom : zoom);
    context.translate(-spot[0] * bitmap.width, -spot[1] * bitmap.height);
    context.drawImage(bitmap, 0, 0);
  }, [bitmap, spot, turn]);
  return (
    <span
      class={styles.loupe}
      data-side={x > 0.5 ? 'left' : 'right'}
      style={{ '--x': `${x * 100}%`, '--y': `${y * 100}%` }}
      aria-hidden="true"
    >
      <canvas ref={canvas} class={styles.glass} width={sidePx} height={sidePx} />
    </span>
  );
}
