import { wayLetters } from '../../model/white-words.ts';
import { isSmallWhite, type White } from '../../model/whites.ts';
import { mostRows } from './rows-shown.ts';
import styles from './white-marks.module.css';

/** Numbers stand above whites smaller than this, which they would hide, mm. */
const besideUnderMm = 12;

const placed = ({ at: [x, y] }: White) => ({ '--x': `${x * 100}%`, '--y': `${y * 100}%` });

/** Over the picture: number and letter of the large whites, a ring round the chosen one. */
export function WhiteMarks({ whites, index }: { whites: readonly White[]; index: number }) {
  const chosen = whites[index];
  return (
    <>
      {chosen && (
        <span class={styles.ring} style={placed(chosen)} aria-hidden="true" data-testid="ring" />
      )}
      {whites.map((white, i) =>
        i === index || (i < mostRows && !isSmallWhite(white)) ? (
          <span
            key={i}
            class={styles.number}
            style={placed(white)}
            data-chosen={i === index}
            data-beside={i !== index && white.shortSideMm < besideUnderMm}
            aria-hidden="true"
          >
            {i + 1} {wayLetters[white.way]}
          </span>
        ) : null,
      )}
    </>
  );
}
