import { cssColour } from '../../drawing/css-colour.ts';
import type { Lab } from '../../model/lab.ts';
import type { PatchMeaning } from '../../model/paint-measure.ts';
import type { MeasuredPaint } from '../../state/paint-measuring.ts';
import styles from './measure-result.module.css';
import { sureInWords } from './sure-in-words.ts';

interface MeasureResultProps {
  found: MeasuredPaint;
  inWords: (is: PatchMeaning) => string;
}

const tenths = Array.from({ length: 10 }, (_, n) => n);

/** Each patch as measured over the same as the paint found would have it, and how sure that is. */
export function MeasureResult({ found, inWords }: MeasureResultProps) {
  const { measure, patches, caution } = found;
  return (
    <>
      <ul class={styles.pairs} data-testid="measured-pairs">
        {patches.map(({ is, lab }, n) => (
          <li key={inWords(is)} class={styles.pair}>
            <span class={styles.swatch} style={{ background: cssColour(lab) }} />
            <span
              class={styles.swatch}
              style={{ background: cssColour(measure.expected[n] as Lab) }}
            />
            {inWords(is)}
          </li>
        ))}
      </ul>
      <p class={styles.legend}>Above as measured, below as the app will mix it.</p>
      {caution && <p role="status">{caution}</p>}
      <div class={styles.meter} aria-hidden="true">
        {tenths.map((n) => (
          <span key={n} data-full={n < Math.round(10 * measure.sure) || undefined} />
        ))}
      </div>
      <p class={styles.sure} role="status" data-testid="sure">
        <strong>{sureInWords(measure.sure)}</strong> {measure.why}
      </p>
    </>
  );
}
