import '../../styles/print-only.css';
import type { Outline } from '../../core/outline/outline.ts';
import {
  gridData,
  gridNames,
  gridStyle,
  type OutlineChoice,
  outlinePaths,
} from '../../core/outline/outline-svg.ts';
import {
  overlapMm,
  type PrintTile,
  type PrintTiles,
  printWindow,
  registerMarks,
} from '../../core/outline/print-tiles.ts';
import styles from './drawing-pages.module.css';

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
function DrawingPage({ title, tile, pages, lines }: DrawingPageProps) {
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

/** A bar of 100 mm to lay a ruler to; place in mm of the page. */
function ScaleBar({ x, y }: { x: number; y: number }) {
  const ticks = Array.from(
    { length: 11 },
    (_, i) => `M${x + 10 * i} ${y}v${i % 5 === 0 ? 4 : 2.5}`,
  );
  return (
    <>
      <path
        d={`M${x} ${y}h100${ticks.join('')}`}
        fill="none"
        stroke="#000"
        stroke-width="0.3"
        data-testid="scale-bar"
      />
      <text x={x} y={y + 9}>
        This bar is 100 mm long. If yours is not, print again at 100 %, not fitted to the page.
      </text>
    </>
  );
}

interface OutlineLinesProps {
  outline: Outline;
  choice: OutlineChoice;
  /** Lines this much thicker than in print, where the drawing is shown small. */
  thicker?: number;
  /** A name to use the lines again by. */
  id?: string;
}

/** The drawing as it is printed and saved, in mm of the sheet. */
export function OutlineLines({ outline, choice, thicker = 1, id }: OutlineLinesProps) {
  const { widthMm, heightMm } = outline;
  const { letters, line, frame, grey } = gridStyle;
  return (
    <g id={id} fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round">
      <rect width={widthMm} height={heightMm} stroke-width={frame * thicker} />
      {choice.grid && (
        <>
          <path d={gridData(outline)} stroke={grey} stroke-width={line * thicker} />
          <g fill={grey} stroke="none" font-family="sans-serif" font-size={letters * thicker}>
            {gridNames(outline).map(({ text, x, y }) => (
              <text key={text} x={x} y={y + letters * (thicker - 1)}>
                {text}
              </text>
            ))}
          </g>
        </>
      )}
      {outlinePaths(outline, choice).map(({ d, width, dash }, i) => (
        <path
          key={i}
          d={d}
          stroke-width={width * thicker}
          stroke-dasharray={dash.map((length) => length * thicker).join(' ') || undefined}
        />
      ))}
    </g>
  );
}
