import '../../styles/print-only.css';
import type { OutlineChoice } from '../../drawing/outline-paths.ts';
import type { Outline } from '../../model/outline.ts';
import type { PrintTiles } from '../../model/print-tiles.ts';
import { DrawingPage } from './drawing-page.tsx';
import styles from './drawing-pages.module.css';
import { OutlineLines } from './outline-lines.tsx';

interface DrawingPagesProps {
  title: string;
  outline: Outline;
  choice: OutlineChoice;
  pages: PrintTiles;
}

/** The lines are in the page once; every printed page shows its part of them. */
const linesId = 'drawing-lines';

/** The drawing on as many pages as it takes, at true size. Seen in print only. */
export function DrawingPages({ title, outline, choice, pages }: DrawingPagesProps) {
  return (
    <div data-print aria-hidden="true">
      <svg class={styles.store} width="0" height="0" aria-hidden="true">
        <defs>
          <OutlineLines id={linesId} outline={outline} choice={choice} />
        </defs>
      </svg>
      {pages.tiles.map((tile) => (
        <DrawingPage key={tile.n} title={title} tile={tile} pages={pages} lines={linesId} />
      ))}
    </div>
  );
}
