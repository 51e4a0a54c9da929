import type { Point } from '../../core/colour/lab.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import styles from './drawn-stroke.module.css';

interface DrawnStrokeProps {
  size: PixelSize;
  stroke: readonly Point[];
  closed: boolean;
  /** Width of the brush, px of the picture; 0 for a line. */
  brushPx: number;
}

/** What she is drawing: a brush stroke, or a line in black with a white casing. */
export function DrawnStroke({ size, stroke, closed, brushPx }: DrawnStrokeProps) {
  const { width, height } = size;
  if (stroke.length === 0) return null;
  const drawn = `${linePath(stroke, size)}${closed ? 'Z' : ''}`;
  return (
    <svg
      class={styles.lines}
      viewBox={`0 0 ${width} ${height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      {brushPx > 0 ? (
        // A dab is a line without length: only round ends make it a spot.
        <path class={styles.brush} d={`${drawn}l0 0`} stroke-width={brushPx} />
      ) : (
        <>
          <path class={styles.casing} data-standing="hers" d={drawn} />
          <path class={styles.ink} data-standing="hers" d={drawn} />
        </>
      )}
    </svg>
  );
}

/** The `d` of an SVG path through points (0..1 of the picture), in px of the picture. */
export const linePath = (points: readonly Point[], { width, height }: PixelSize): string =>
  points
    .map(
      ([x, y], i) => `${i === 0 ? 'M' : 'L'}${(x * width).toFixed(1)} ${(y * height).toFixed(1)}`,
    )
    .join('');
