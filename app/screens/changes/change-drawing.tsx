import { useRef } from 'preact/hooks';
import type { DecisionOf } from '../../core/decisions/standing-decisions.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import { strokeInCut } from '../../core/reference/photo-stroke.ts';
import type { Reference } from '../../core/reference/reference.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import lines from '../../ui/pointer/drawn-stroke.module.css';
import { linePath } from '../../ui/pointer/drawn-stroke.tsx';
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

/** Which of her changes the picture that is seen does not show yet. */
export function useUnreadChanges(
  seen: OpenedReading | null,
  changes: readonly AlterDecision[],
): readonly AlterDecision[] {
  const followed = useRef<{ seen: OpenedReading | null; ids: ReadonlySet<string> }>({
    seen: null,
    ids: new Set(),
  });
  // A reading always is one of all that stood when it came: a newer decision starts it anew.
  if (followed.current.seen !== seen)
    followed.current = { seen, ids: new Set(changes.map(({ id }) => id)) };
  return changes.filter(({ id }) => !followed.current.ids.has(id));
}
