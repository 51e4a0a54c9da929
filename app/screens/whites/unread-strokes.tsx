import type { PixelSize } from '../../model/pixel-size.ts';
import type { Reference } from '../../model/reference.ts';
import type { DecisionOf } from '../../model/standing-decisions.ts';
import { strokeInCut } from '../../model/stroke-on-photo.ts';
import drawn from '../strokes/drawn-lines.module.css';
import { linePath } from '../strokes/line-path.ts';
import styles from './unread-strokes.module.css';

interface UnreadStrokesProps {
  size: PixelSize;
  cut: Pick<Reference, 'crop' | 'sheet'>;
  strokes: readonly DecisionOf<'white'>[];
}

/** Her brush strokes as she drew them: paper where she keeps, a veil where she paints over. */
export function UnreadStrokes({ size, cut, strokes }: UnreadStrokesProps) {
  if (strokes.length === 0) return null;
  const longSide = Math.max(size.width, size.height);
  return (
    <svg
      class={drawn.lines}
      viewBox={`0 0 ${size.width} ${size.height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      data-testid="unread-strokes"
    >
      {strokes.map((decision) => {
        const { path, brush } = strokeInCut(cut, decision);
        return (
          <path
            key={decision.id}
            class={styles.stroke}
            data-mode={decision.mode}
            // A dab is a line without length: only round ends make it a spot.
            d={`${linePath(path, size)}l0 0`}
            stroke-width={brush * longSide}
          />
        );
      })}
    </svg>
  );
}
