import type { Point } from '../../model/lab.ts';
import type { PixelSize } from '../../model/reference.ts';
import { type LineStretch, lostUnder, standsOutFrom } from '../../model/subject.ts';
import styles from './drawn-line.module.css';

interface DrawnLineProps {
  size: PixelSize;
  line: readonly LineStretch[];
  /** What she is drawing. */
  stroke: readonly Point[];
  closed: boolean;
  /** Width of the brush, px of the picture; 0 for a line. */
  brushPx: number;
}

type Standing = 'out' | 'seen' | 'lost';

function standingOf({ contrast }: LineStretch): Standing {
  const size = Math.abs(contrast);
  if (size < lostUnder) return 'lost';
  return size < standsOutFrom ? 'seen' : 'out';
}

/** The subject's line by how it stands against its ground, and her stroke; black with a white casing. */
export function DrawnLine({ size, line, stroke, closed, brushPx }: DrawnLineProps) {
  const { width, height } = size;
  const pathOf = (points: readonly Point[]): string =>
    points
      .map(
        ([x, y], i) => `${i === 0 ? 'M' : 'L'}${(x * width).toFixed(1)} ${(y * height).toFixed(1)}`,
      )
      .join('');
  const inks = ['casing', 'ink'] as const;
  const drawn = stroke.length > 0 && `${pathOf(stroke)}${closed ? 'Z' : ''}`;
  return (
    <svg
      class={styles.lines}
      viewBox={`0 0 ${width} ${height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      {inks.map((ink) =>
        line.map((stretch, i) => (
          <path
            key={`${ink} ${i}`}
            class={styles[ink]}
            data-standing={standingOf(stretch)}
            d={pathOf(stretch.path)}
          />
        )),
      )}
      {drawn &&
        (brushPx > 0 ? (
          // A dab is a line without length: only round ends make it a spot.
          <path class={styles.brush} d={`${drawn}l0 0`} stroke-width={brushPx} />
        ) : (
          inks.map((ink) => <path key={ink} class={styles[ink]} data-standing="hers" d={drawn} />)
        ))}
    </svg>
  );
}
