import type { PixelSize } from '../../model/pixel-size.ts';
import { type LineStretch, lostUnder, standsOutFrom } from '../../model/subject.ts';
import styles from '../strokes/drawn-lines.module.css';
import { linePath } from '../strokes/line-path.ts';

type Standing = 'out' | 'seen' | 'lost';

function standingOf({ contrast }: LineStretch): Standing {
  const size = Math.abs(contrast);
  if (size < lostUnder) return 'lost';
  return size < standsOutFrom ? 'seen' : 'out';
}

/** The subject's line by how it stands against its ground; black with a white casing. */
export function SubjectLineDrawing({
  size,
  line,
}: {
  size: PixelSize;
  line: readonly LineStretch[];
}) {
  return (
    <svg
      class={styles.lines}
      viewBox={`0 0 ${size.width} ${size.height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      {(['casing', 'ink'] as const).map((ink) =>
        line.map((stretch, i) => (
          <path
            key={`${ink} ${i}`}
            class={styles[ink]}
            data-standing={standingOf(stretch)}
            d={linePath(stretch.path, size)}
          />
        )),
      )}
    </svg>
  );
}
