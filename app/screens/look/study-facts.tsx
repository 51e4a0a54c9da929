import { useSignal } from '@preact/signals';
import { cssColour } from '../../drawing/css-colour.ts';
import { massesInWords } from '../../model/masses-in-words.ts';
import { studySentence } from '../../model/study-sentence.ts';
import type { Seen } from '../../state/seen.ts';
import type { Studio } from '../../state/studio.ts';
import { BandCount } from './band-count.tsx';
import { DecideRows } from './decide-rows.tsx';
import { percent } from './percent.ts';
import { RangeChoice } from './range-choice.tsx';
import styles from './study-facts.module.css';
import { StudyNumbers } from './study-numbers.tsx';
import type { ToolsState } from './use-study-tools.ts';

interface StudyFactsProps {
  studio: Studio;
  paintingId: string;
  seen: Seen;
  tools: ToolsState;
}

/** The one sentence that matters most, then the whites, the choices and the colours. */
export function StudyFacts({ studio, paintingId, seen, tools }: StudyFactsProps) {
  const numbers = useSignal(false);
  const { reading } = seen;
  return (
    <div class={styles.facts}>
      <p class={styles.sentence} data-testid="sentence">
        {studySentence(reading)}
      </p>
      {reading.warnings.length > 1 && (
        <details>
          <summary class={styles.summary}>What else was seen</summary>
          <ul class={styles.more}>
            {reading.warnings.slice(1).map((warning) => (
              <li key={warning.code}>{warning.text}</li>
            ))}
          </ul>
        </details>
      )}
      <DecideRows reading={reading} paintingId={paintingId} />
      <BandCount studio={studio} reading={reading} />
      {reading.masses && <p class={styles.quiet}>{massesInWords(reading.masses)}</p>}
      <RangeChoice studio={studio} seen={seen} tools={tools} />
      <h2 class={styles.heading}>Colours</h2>
      <ul class={styles.families}>
        {reading.families.map((family) => (
          <li key={family.id}>
            <span class={styles.swatch} style={{ background: cssColour(family.lab) }} />
            {family.name}, {percent(family.share)}
          </li>
        ))}
      </ul>
      <label class={styles.switch}>
        <input
          type="checkbox"
          checked={numbers.value}
          onChange={(event) => {
            numbers.value = event.currentTarget.checked;
          }}
        />
        Numbers
      </label>
      {numbers.value && <StudyNumbers reading={reading} />}
      {tools === 'missing' && (
        <p class={styles.quiet}>
          Some tools of this page did not come through. Open it once more with a network.
        </p>
      )}
    </div>
  );
}
