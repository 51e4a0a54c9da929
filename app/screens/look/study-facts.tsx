import { useSignal } from '@preact/signals';
import { cssColour } from '../../drawing/css-colour.ts';
import type { Reading } from '../../model/reading.ts';
import { studySentence } from '../../model/study-sentence.ts';
import type { Studio } from '../../state/studio.ts';
import { Button } from '../common/button.tsx';
import { ChoiceRow } from '../common/choice-row.tsx';
import styles from './study-facts.module.css';

const percent = (share: number): string =>
  share > 0 && share < 0.01 ? 'under 1 %' : `${Math.round(share * 100)} %`;

/** The one sentence that matters most, then the whites, the choices and the colours. */
export function StudyFacts({ studio, reading }: { studio: Studio; reading: Reading }) {
  const numbers = useSignal(false);
  const count = reading.bands.length;
  const { share, count: whites } = reading.reserves;
  return (
    <div class={styles.facts}>
      <p class={styles.sentence} data-testid="sentence">
        {studySentence(reading)}
      </p>
      <p>
        {whites
          ? `Whites to keep: ${percent(share)} of the sheet, in ${whites} ${whites === 1 ? 'shape' : 'shapes'}.`
          : 'No whites to keep: the first wash may go over everything.'}
      </p>
      <div class={styles.choice}>
        <span>How many values</span>
        <span class={styles.stepper}>
          <Button
            aria-label="One value fewer"
            disabled={count <= 2}
            onClick={() => studio.decide({ kind: 'bands', count: count - 1 })}
          >
            −
          </Button>
          <output aria-live="polite">{count}</output>
          <Button
            aria-label="One value more"
            disabled={count >= 7}
            onClick={() => studio.decide({ kind: 'bands', count: count + 1 })}
          >
            +
          </Button>
        </span>
      </div>
      <p class={styles.quiet}>{reading.bandsWhy}</p>
      <ChoiceRow
        label="How dark and light the sheet becomes"
        choices={[
          ['photographed', 'As photographed'],
          ['opened', 'Opened up'],
        ]}
        chosen={reading.range.mode}
        onChoose={(mode) => studio.decide({ kind: 'range', mode })}
      />
      <p class={styles.quiet}>
        {reading.range.mode === 'opened'
          ? 'Opened up: the lightest becomes paper white, the darkest as dark as your paints reach.'
          : 'As photographed: the picture keeps its own light or dark mood.'}
      </p>
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
    </div>
  );
}

function StudyNumbers({ reading }: { reading: Reading }) {
  return (
    <table class={styles.numbers}>
      <caption class={styles.quiet}>
        Lightness L* 0 black to 100 white; value 0 black to 10 white (ASTM D1535)
      </caption>
      <thead>
        <tr>
          <th scope="col">Band</th>
          <th scope="col">L* from – to</th>
          <th scope="col">Value</th>
          <th scope="col">Area</th>
          <th scope="col">On the sheet</th>
        </tr>
      </thead>
      <tbody>
        {reading.bands.map((band) => (
          <tr key={band.band}>
            <th scope="row">{band.band}</th>
            <td>
              {band.from.toFixed(0)} – {band.to.toFixed(0)}
            </td>
            <td>{band.value.toFixed(1)}</td>
            <td>{percent(band.share)}</td>
            <td>L* {band.plannedLightness.toFixed(0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
