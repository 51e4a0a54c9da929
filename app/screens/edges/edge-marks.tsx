import type { Edge } from '../../model/edge.ts';
import type { Point } from '../../model/lab.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import drawn from '../strokes/drawn-lines.module.css';
import { linePath } from '../strokes/line-path.ts';
import styles from './edge-marks.module.css';

interface EdgeMarksProps {
  size: PixelSize;
  /** The edge in hand. */
  edge: Edge | null;
  focus: Point | null;
}

const inside = (share: number): boolean => share >= 0 && share <= 1;

/** Over the picture: the edge in hand, thick, and the sign of the centre of interest. */
export function EdgeMarks({ size, edge, focus }: EdgeMarksProps) {
  return (
    <>
      {edge && (
        <svg
          class={drawn.lines}
          viewBox={`0 0 ${size.width} ${size.height}`}
          preserveAspectRatio="none"
          aria-hidden="true"
          data-testid="chosen-edge"
        >
          {(['outline', 'casing', 'ink'] as const).map((ink) => (
            <path key={ink} class={styles[ink]} d={linePath(edge.path, size)} />
          ))}
        </svg>
      )}
      {focus?.every(inside) && (
        <svg
          class={styles.focus}
          style={{ left: `${focus[0] * 100}%`, top: `${focus[1] * 100}%` }}
          viewBox="-24 -24 48 48"
          aria-hidden="true"
          data-testid="focus-mark"
        >
          {(['casing', 'ink'] as const).map((ink) => (
            <path
              key={ink}
              data-ink={ink}
              d="M-21 0A34 34 0 0 1 21 0A34 34 0 0 1 -21 0M-6 0A6 6 0 0 1 6 0A6 6 0 0 1 -6 0"
            />
          ))}
        </svg>
      )}
    </>
  );
}
