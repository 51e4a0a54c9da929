import type { OutlineChoice } from '../../drawing/outline-paths.ts';
import { gridInWords } from '../../model/grid-in-words.ts';
import type { Outline } from '../../model/outline.ts';
import type { PrintTiles } from '../../model/print-tiles.ts';
import { Button } from '../common/button.tsx';
import styles from './drawing-screen.module.css';

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
    <div class={styles.panel}>
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
        True size, {mm(outline.widthMm)} × {mm(outline.heightMm)} mm, on {count}{' '}
        {count === 1 ? 'page' : 'pages'} of A4 or letter paper. Print at 100 %, lay cross on cross,
        and check the bar with a ruler.
      </p>
      <p class={styles.quiet}>
        Then rub soft pencil on the back and go over the lines, or trace at a window: paper up to
        about 300 g/m² lets enough light through. Or draw by the grid, square by square. A light
        pencil, and little rubbing out.
      </p>
    </div>
  );
}
