import { cssColour } from '../../drawing/css-colour.ts';
import { consistencySign } from '../../model/consistency.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import type { Mix, Strength } from '../../model/wash-plan.ts';
import { wetLook } from '../../model/wet-look.ts';
import styles from './puddle-list.module.css';

/** One strength of a puddle: dry colour over wet, the consistency word, and the value it dries to. */
export function PuddleUse({ mix, strength, of }: { mix: Mix; strength?: Strength; of: string }) {
  const { consistency, expected } = strength ?? mix;
  return (
    <li class={styles.use}>
      <span class={styles.swatch} aria-hidden="true">
        <span style={{ background: cssColour(expected) }} />
        {!strength && <span style={{ background: cssColour(mix.expectedWet) }} />}
      </span>
      <span>
        <strong title={consistencySign[consistency]}>{consistency}</strong> for the {of}
        <br />
        <span class={styles.quiet}>
          dries to value {valueOfLightness(expected[0]).toFixed(1)}
          {!strength && `; ${wetLook(expected, mix.expectedWet)}`}
        </span>
      </span>
    </li>
  );
}
