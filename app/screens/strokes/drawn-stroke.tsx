import type { Point } from '../../model/lab.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import styles from './drawn-lines.module.css';
import { linePath } from './line-path.ts';

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
