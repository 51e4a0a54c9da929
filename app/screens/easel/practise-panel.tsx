import type { DryingClockName } from '../../core/drying/learn-pace.ts';
import { usualWaterGrams, type WaterKind } from '../../core/drying/water.ts';
import { waterKindOf } from '../../core/plan/water-kind.ts';
import { pacesOf } from '../../core/session/drying-clock.ts';
import type { Practising } from '../../core/session/session-event.ts';
import { practiceLeftMs } from '../../core/session/watch-paper.ts';
import { paceInWords, paperInWords } from '../../core/words/drying/drying-words.ts';
import { words } from '../../core/words/plan/words.ts';
import { clockFace } from '../../core/words/session/wait-words.ts';
import type { Easel } from '../../state/session/easel.ts';
import { Button } from '../../ui/controls/button.tsx';
import { Fold } from './fold.tsx';
import styles from './more-panels.module.css';

/** The next wash tried on a scrap for five minutes; its shine teaches the clock. */
export function PractisePanel({ easel }: { easel: Easel }) {
  const { practice, stepIndex, doneKeys } = easel.session.value;
  const { plan } = easel.desk.value ?? {};
  const step = plan?.steps.find(
    ({ key, ...each }, i) =>
      i >= stepIndex &&
      !doneKeys.includes(key) &&
      each.kind === 'wash' &&
      waterKindOf({ key, ...each }),
  );
  const key = practice?.key ?? step?.key;
  const shown = plan?.steps.find((each) => each.key === key);
  if (!shown || key === undefined) return null;
  const tell = (doing: Practising) => () => easel.tell({ kind: 'practise', key, doing });
  const left = practiceLeftMs({ practice, atMs: easel.time.value.atMs });
  return (
    <Fold title="Practise on a scrap" open={practice !== null}>
      {!practice ? (
        <>
          <p>
            Five minutes on a scrap of the same paper: {words(shown.title)}. Tell when its shine has
            gone, and the clock learns.
          </p>
          <Button large onClick={tell('begun')}>
            Take a scrap
          </Button>
        </>
      ) : (
        <>
          <p>{words(shown.prompt)}</p>
          <p class={styles.figure} role="timer" aria-label="Time for the scrap">
            {left > 0 ? clockFace(left) : '0:00'}
          </p>
          {left === 0 && <p>Five minutes are over: back to the sheet.</p>}
          {practice.downMs === null && (
            <Button look="main" large onClick={tell('brush-down')}>
              Brush down
            </Button>
          )}
          {practice.downMs !== null && practice.shineGoneMs === null && (
            <Button look="main" large onClick={tell('shine-gone')}>
              Shine gone on the scrap
            </Button>
          )}
          {practice.downMs !== null && practice.shineGoneMs !== null && (
            <p role="status">
              The shine went in {clockFace(practice.shineGoneMs - practice.downMs)}. The clock has
              heard it.
            </p>
          )}
          <Button large onClick={tell('ended')}>
            Put the scrap away
          </Button>
        </>
      )}
    </Fold>
  );
}

const kinds = Object.keys(usualWaterGrams) as WaterKind[];
const clocks: readonly DryingClockName[] = ['shine', 'dry'];

/** What her taps have taught of this paper, each clock by itself, and how to forget it. */
export function PacePanel({ easel }: { easel: Easel }) {
  const session = easel.session.value;
  const { paper } = session;
  const learned = kinds.flatMap((wash) =>
    clocks.flatMap((clock) => {
      const words = paceInWords(clock, wash, pacesOf(session, wash)[clock]);
      return words === null ? [] : [{ wash, clock, words }];
    }),
  );
  return (
    <Fold title="Your drying pace">
      <p class="quiet">On {paperInWords(paper)}.</p>
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
