import type { DryingClockName } from '../../model/drying/learn-pace.ts';
import { paceInWords } from '../../model/drying/pace-in-words.ts';
import { paperInWords } from '../../model/drying/paper-choice.ts';
import { type WaterKind, waterOf } from '../../model/drying/water-of.ts';
import { pacesOf } from '../../model/session/reckon-drying.ts';
import type { Easel } from '../../state/easel.ts';
import { Button } from '../common/button.tsx';
import { Fold } from './fold.tsx';
import styles from './more-panel.module.css';

const kinds = Object.keys(waterOf) as WaterKind[];
const clocks: readonly DryingClockName[] = ['shine', 'dry'];

/** What her taps have taught of this paper, each clock by itself, and how to forget it. */
export function PacePanel({ easel }: { easel: Easel }) {
  const now = easel.session.value;
  const { paper } = now;
  const learned = kinds.flatMap((wash) =>
    clocks.flatMap((clock) => {
      const words = paceInWords(clock, wash, pacesOf(now, wash)[clock]);
      return words === null ? [] : [{ wash, clock, words }];
    }),
  );
  return (
    <Fold title="Your drying pace">
      <p class={styles.quiet}>On {paperInWords(paper)}.</p>
      {learned.length === 0 && (
        <p>
          Nothing learned yet: until then the times span what painters report. Tap 'Shine gone' and
          'It is bone dry' in the moment they are true.
        </p>
      )}
      {learned.map(({ wash, clock, words }) => (
        <div key={`${wash} ${clock}`} class={styles.row}>
          <span>{words}</span>
          <Button
            aria-label={`Forget: ${words}`}
            onClick={() => easel.tell({ kind: 'pace-forgotten', clock, paper, wash })}
          >
            Forget
          </Button>
        </div>
      ))}
    </Fold>
  );
}
