import { wayWords, whiteInWords } from '../../model/white-words.ts';
import { type White, type WhiteWay, whiteWays } from '../../model/whites.ts';
import { Button } from '../common/button.tsx';
import { ChoiceRow } from '../common/choice-row.tsx';
import styles from './white-row.module.css';

interface WhiteRowProps {
  white: White;
  /** As in the picture, from 1. */
  number: number;
  /** The way proposed for it. */
  proposed: WhiteWay;
  chosen: boolean;
  sheet: { readonly widthMm: number; readonly heightMm: number };
  onShow: () => void;
  /** null takes her decision back. */
  onWay: (way: WhiteWay | null) => void;
}

export const wayChoices = whiteWays.map((way) => [way, wayWords[way]] as const);

/** One white: how large it is, how it is kept, and why that is proposed. */
export function WhiteRow(props: WhiteRowProps) {
  const { white, number, proposed, chosen, sheet, onShow, onWay } = props;
  return (
    <div class={styles.row} data-chosen={chosen} data-white={number}>
      <button type="button" class={styles.name} aria-pressed={chosen} onClick={onShow}>
        <span class={styles.number}>
          <span class="spoken">White </span>
          {number}
        </span>
        <span>{whiteInWords(white, sheet)}</span>
      </button>
      <ChoiceRow
        label={`How white ${number} is kept`}
        choices={wayChoices}
        chosen={white.way}
        onChoose={(way) => (way !== white.way || !white.decided) && onWay(way)}
      />
      <p class={styles.why}>
        {white.decided ? `Proposed: ${wayWords[proposed].toLowerCase()}. ` : ''}
        {white.why}
      </p>
      {white.decided && <Button onClick={() => onWay(null)}>As proposed</Button>}
    </div>
  );
}
