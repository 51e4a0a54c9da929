import type { OutlineChoice } from '../../drawing/outline-paths.ts';
import type { Outline } from '../../model/outline.ts';
import styles from './drawing-screen.module.css';
import { OutlineLines } from './outline-lines.tsx';

/** As thick as on a sheet of this long side, mm, whatever the sheet: so that a small picture shows them. */
const seenAsMm = 210;

/** The drawing over the picture, lines thick enough to be seen on a small screen. */
export function DrawingPreview({ outline, choice }: { outline: Outline; choice: OutlineChoice }) {
  const { widthMm, heightMm } = outline;
  return (
    <svg
      class={styles.lines}
      viewBox={`0 0 ${widthMm} ${heightMm}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      data-testid="drawing"
    >
      <OutlineLines
        outline={outline}
        choice={choice}
        thicker={Math.max(1, Math.max(widthMm, heightMm) / seenAsMm)}
      />
    </svg>
  );
}
