import { correctedPaints, forgetStrength } from '../../core/paint/strength-corrections.ts';
import { dateInWords } from '../../core/words/dates.ts';
import { formatCount, joinWords } from '../../core/words/numbers.ts';
import { correctionInWords, toldByInWords } from '../../core/words/paint/strength-corrections.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { Button } from '../../ui/controls/button.tsx';
import styles from './box-screen.module.css';

interface StrengthNoteProps {
  ownBox: OwnBoxState;
  /** Paint id. */
  paint: string;
}

/** Which way her scraps have corrected the strength of a paint, and back; nothing where they have not. */
export function StrengthNote({ ownBox, paint }: StrengthNoteProps) {
  const found = correctedPaints(ownBox.box.value.strengthLessons).find(
    (each) => each.paint === paint,
  );
  if (!found) return null;
  return (
    <span class={styles.actions}>
      <span>{correctionInWords(found, toldByInWords(found))}</span>
      <Button onClick={() => reset(ownBox, paint)}>
        Reset<span class="spoken"> the strength of {found.name}</span>
      </Button>
    </span>
  );
}

/** Every paint whose strength her scraps have corrected, each to be reset, or all; nothing where there is none. */
export function StrengthList({ ownBox }: Pick<StrengthNoteProps, 'ownBox'>) {
  const found = correctedPaints(ownBox.box.value.strengthLessons);
  if (found.length === 0) return null;
  return (
    <section class={styles.section} aria-label="Corrected by your scraps and sheets">
      <h2 class={styles.heading}>Corrected by your scraps and sheets</h2>
      <ul class="stack">
        {found.map(({ paint, name, count, sheets, at }) => (
          <li key={paint}>
            <strong class={styles.name}>{name}</strong>{' '}
            <span class="quiet">
              {toldCount(count, sheets)}, the last on {dateInWords(at)}
            </span>
            <StrengthNote ownBox={ownBox} paint={paint} />
          </li>
        ))}
      </ul>
      {found.length > 1 && (
        <div class={styles.actions}>
          <Button onClick={() => reset(ownBox)}>Reset all</Button>
        </div>
      )}
    </section>
  );
}

/** '2 scraps', '1 sheet', '2 scraps and 1 sheet'. */
const toldCount = (count: number, sheets: number): string =>
  joinWords([
    ...(count > sheets ? [formatCount(count - sheets, 'scrap')] : []),
    ...(sheets > 0 ? [formatCount(sheets, 'sheet')] : []),
  ]);

const reset = (ownBox: OwnBoxState, paint?: string): void =>
  void ownBox.change((box) => ({
    ...box,
    strengthLessons: forgetStrength(box.strengthLessons ?? [], paint),
  }));
