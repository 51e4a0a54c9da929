import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import styles from './small-picture.module.css';

/** Canvas px: twice what it is shown at. */
const side = 128;
/** Room left round what is meant, as a share of its size; and the least that is shown, as a share of the long side. */
const room = 0.4;
const least = 0.08;

interface SmallPictureProps {
  /** The whole picture. */
  bitmap: ImageBitmap;
  /** What is meant in it, as lines: 0..1 of its sides. */
  lines: readonly (readonly Point[])[];
}

/** The part of a picture that a row of a list is about, with a line round or along what is meant. */
export function SmallPicture({ bitmap, lines }: SmallPictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context) drawPart(context, bitmap, lines);
  }, [bitmap, lines]);
  return (
    <span aria-hidden="true">
      <canvas ref={canvas} class={styles.small} width={side} height={side} />
    </span>
  );
}

function drawPart(
  context: CanvasRenderingContext2D,
  bitmap: ImageBitmap,
  lines: readonly (readonly Point[])[],
): void {
  const { width, height } = bitmap;
  const places = lines.map((line) => line.map(([x, y]): Point => [x * width, y * height]));
  const all = places.flat();
  if (width === 0 || all.length === 0) return; // handed back already, or nothing is meant
  const range = (axis: 0 | 1): readonly [number, number] => [
    all.reduce((low, place) => Math.min(low, place[axis]), Number.POSITIVE_INFINITY),
    all.reduce((high, place) => Math.max(high, place[axis]), 0),
  ];
  const [[left, right], [top, bottom]] = [range(0), range(1)];
  const size = Math.max(
    least * Math.max(width, height),
    (1 + room) * Math.max(right - left, bottom - top),
  );
  const cut = Math.min(size, width, height);
  const within = (middle: number, most: number): number =>
    Math.max(0, Math.min(most - cut, middle - cut / 2));
  const x = within((left + right) / 2, width);
  const y = within((top + bottom) / 2, height);
  context.clearRect(0, 0, side, side);
  context.drawImage(bitmap, x, y, cut, cut, 0, 0, side, side);
  const scale = side / cut;
  context.lineJoin = 'round';
  context.lineCap = 'round';
  // Black with a white casing: seen on every ground.
  for (const [ink, wide] of [
    ['white', 7],
    ['black', 3],
  ] as const) {
    context.strokeStyle = ink;
    context.lineWidth = wide;
    for (const line of places) {
      context.beginPath();
      for (const [px, py] of line) context.lineTo((px - x) * scale, (py - y) * scale);
      context.stroke();
    }
  }
}
