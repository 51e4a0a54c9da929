import {
  overlapMm,
  type PrintTile,
  type PrintTiles,
  printWindow,
  registerMarks,
} from '../../model/print-tiles.ts';
import styles from './drawing-pages.module.css';
import { ScaleBar } from './scale-bar.tsx';

interface DrawingPageProps {
  title: string;
  tile: PrintTile;
  pages: PrintTiles;
  /** Name of the lines in the page. */
  lines: string;
}

/** Size of a printed page without its margins, mm: fits A4 and letter. */
const page = { widthMm: 190, heightMm: 256 } as const;
const crossMm = 4;

/** One page: its part of the drawing, crosses where pages meet, its place, and a bar to check the size. */
export function DrawingPage({ title, tile, pages, lines }: DrawingPageProps) {
  const { shortMm, longMm } = printWindow;
  const { leftMm, topMm, row, column, beside } = tile;
  const { widthMm, heightMm, rows, columns, turned } = pages;
  const half = overlapMm / 2;
  const lay = [
    beside.left && `M${leftMm + half} ${topMm}v${heightMm}`,
    beside.right && `M${leftMm + widthMm - half} ${topMm}v${heightMm}`,
    beside.above && `M${leftMm} ${topMm + half}h${widthMm}`,
    beside.below && `M${leftMm} ${topMm + heightMm - half}h${widthMm}`,
  ].filter(Boolean);
  const marks = registerMarks(tile, pages);
  return (
    <div class={styles.page} data-testid="drawing-page">
      <svg
        width={`${page.widthMm}mm`}
        height={`${page.heightMm}mm`}
        viewBox={`0 0 ${page.widthMm} ${page.heightMm}`}
        font-family="sans-serif"
        font-size="3.6"
        aria-hidden="true"
      >
        <svg
          x="5"
          width={shortMm}
          height={longMm}
          viewBox={`0 0 ${shortMm} ${longMm}`}
          aria-hidden="true"
        >
          <g transform={turned ? `translate(${shortMm} 0) rotate(90)` : undefined}>
            <g transform={`translate(${-leftMm} ${-topMm})`} fill="none" stroke="#000">
              <use href={`#${lines}`} />
              {lay.length > 0 && (
                <path d={lay.join('')} stroke="#777" stroke-width="0.15" stroke-dasharray="2 2" />
              )}
              {marks.map(([x, y]) => (
                <path
                  key={`${x} ${y}`}
                  stroke-width="0.2"
                  d={`M${x - crossMm} ${y}h${2 * crossMm}M${x} ${y - crossMm}v${2 * crossMm}M${x - 2} ${y}a2 2 0 1 0 4 0a2 2 0 1 0 -4 0`}
                />
              ))}
            </g>
          </g>
        </svg>
        <text x="5" y="235">
          {title}, page {tile.n} of {pages.tiles.length}
          {pages.tiles.length > 1 &&
            `: row ${row} of ${rows}, column ${column} of ${columns}. Lay cross on cross.`}
        </text>
        {turned && (
          <text x="5" y="240">
            Turn this page by a quarter to the left.
          </text>
        )}
        <ScaleBar x={5} y={243} />
      </svg>
    </div>
  );
}
