import type { PixelSize } from '../../model/pixel-size.ts';
import type { Reference } from '../../model/reference.ts';
import type { DecisionOf } from '../../model/standing-decisions.ts';
import { strokeInCut } from '../../model/stroke-on-photo.ts';
import lines from '../strokes/drawn-lines.module.css';
import { linePath } from '../strokes/line-path.ts';
import styles from './change-drawing.module.css';

export type AlterDecision = DecisionOf<'alter'>;

interface ChangeDrawingProps {
  changes: readonly AlterDecision[];
  cut: Pick<Reference, 'crop' | 'sheet'>;
  size: PixelSize;
}

/** Where the picture is changed: dashed lines, and how wide the brush was. */
export function ChangeDrawing({ changes, cut, size }: ChangeDrawingProps) {
  return (
    <svg
      class={lines.lines}
      viewBox={`0 0 ${size.width} ${size.height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      data-testid="changes-drawn"
    >
      {changes.map((change) => {
        const { path, brush } = strokeInCut(cut, change);
        // A dab is a line without length: only round ends make it a spot.
        const drawn = `${linePath(path, size)}${brush > 0 ? 'l0 0' : 'Z'}`;
        return (
          <g key={change.id}>
            {brush > 0 && (
              <path
                class={styles.width}
                d={drawn}
                stroke-width={brush * Math.max(size.width, size.height)}
              />
            )}
            <path class={lines.casing} data-standing="hers" d={drawn} />
            <path class={lines.ink} data-standing="hers" d={drawn} />
          </g>
        );
      })}
    </svg>
  );
}
