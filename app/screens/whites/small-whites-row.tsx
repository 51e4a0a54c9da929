import { countsInWords } from '../../model/white-words.ts';
import { isSmallWhite, smallWhiteMm, type White, type WhiteWay } from '../../model/whites.ts';
import { Button } from '../common/button.tsx';
import { ChoiceRow } from '../common/choice-row.tsx';
import styles from './white-row.module.css';
import { wayChoices } from './white-row.tsx';

interface SmallWhitesRowProps {
  whites: readonly White[];
  /** For all small ones; null takes what was decided about them back. */
  onWay: (way: WhiteWay | null) => void;
}

/** The reason most of them share. */
function commonWhy(whites: readonly White[]): string {
  const said = new Map<string, number>();
  for (const { why } of whites) said.set(why, (said.get(why) ?? 0) + 1);
  return [...said].sort((one, other) => other[1] - one[1])[0]?.[0] ?? '';
}

/** All small whites in one row, with one choice for all. */
export function SmallWhitesRow({ whites, onWay }: SmallWhitesRowProps) {
  const small = whites.filter(isSmallWhite);
  if (small.length === 0) return null;
  const [first] = small;
  const same = small.every(({ way }) => way === first?.way) ? (first?.way ?? null) : null;
  const number = small.length === 1 ? 'One small white' : `${small.length} small whites`;
  return (
    <div class={styles.row} data-testid="small-whites">
      <p>
        <strong>
          {number}, under {smallWhiteMm} mm
        </strong>
        {same === null && `: ${countsInWords(small)}`}
      </p>
      <ChoiceRow
        label="How the small whites are kept"
        choices={wayChoices}
        chosen={same}
        onChoose={(way) => (way !== same || !small.every(({ decided }) => decided)) && onWay(way)}
      />
      <p class={styles.why}>{commonWhy(small)}</p>
      {small.some(({ decided }) => decided) && (
        <Button onClick={() => onWay(null)}>As proposed</Button>
      )}
    </div>
  );
}
