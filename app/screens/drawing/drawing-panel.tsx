import type { Outline } from '../../core/outline/outline.ts';
import type { OutlineChoice } from '../../core/outline/outline-svg.ts';
import type { PrintTiles } from '../../core/outline/print-tiles.ts';
import { formatCount } from '../../core/words/numbers.ts';
import { gridInWords } from '../../core/words/outline/outline-grid.ts';
import { inchesAcross } from '../../core/words/units.ts';
import { Button } from '../../ui/controls/button.tsx';
import { OutlineLines } from './drawing-pages.tsx';
import styles from './drawing-panel.module.css';

interface DrawingPanelProps {
  outline: Outline;
  pages: PrintTiles;
  choice: OutlineChoice;
  onChoice: (next: OutlineChoice) => void;
}

const switches = [
  ['grid', 'Grid'],
  ['soft', 'Soft edges'],
  ['inner', 'Inner lines'],
] as const;

const mm = (length: number): string => String(Math.round(length * 10) / 10);

/** What the drawing holds, what may be left out, and how it comes onto the sheet. */
export function DrawingPanel({ outline, pages, choice, onChoice }: DrawingPanelProps) {
  const count = pages.tiles.length;
  return (
    <div class="stack">
      {outline.lines.length === 0 && (
        <p role="status">There is no edge to draw: the whole picture is one shape.</p>
      )}
      <fieldset class={styles.switches}>
        <legend class="spoken">What is drawn</legend>
        {switches.map(([part, text]) => (
          <Button
            key={part}
            aria-pressed={choice[part]}
            onClick={() => onChoice({ ...choice, [part]: !choice[part] })}
          >
            {text}
          </Button>
        ))}
      </fieldset>
      {choice.grid && <p data-testid="grid-words">{gridInWords(outline.grid)}</p>}
      <p>
        Full lines are crisp edges, thin ones slight edges, dots are soft: do not draw them in hard.
        Lost edges are left out. The thickest lines go round the whites.
      </p>
      <p>
        True size, {mm(outline.widthMm)} × {mm(outline.heightMm)} mm (
        {inchesAcross(outline.widthMm, outline.heightMm)}), on {formatCount(count, 'page')} of A4 or
        letter paper. Print at 100 %, lay cross on cross, and check the bar with a ruler.
      </p>
      <p class="quiet">
        Then rub soft pencil on the back and go over the lines, or trace at a window: paper up to
        about 300 g/m² lets enough light through. Or draw by the grid, square by square. A light
        pencil, and little rubbing out.
      </p>
    </div>
  );
}

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
