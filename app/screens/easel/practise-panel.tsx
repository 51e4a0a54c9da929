import { practiceMs } from '../../model/session/practise.ts';
import type { Practising } from '../../model/session/session-event.ts';
import { waterKindOf } from '../../model/water-kind.ts';
import type { Easel } from '../../state/easel.ts';
import { Button } from '../common/button.tsx';
import { clockFace } from './clock-face.ts';
import { Fold } from './fold.tsx';
import styles from './more-panel.module.css';

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
  const { atMs } = easel.time.value;
  const left = practice ? Math.max(0, practice.begunMs + practiceMs - atMs) : practiceMs;
  return (
    <Fold title="Practise on a scrap" open={practice !== null}>
      {!practice ? (
        <>
          <p>
            Five minutes on a scrap of the same paper: {shown.title}. Tell when its shine has gone,
            and the clock learns.
          </p>
          <Button large onClick={tell('begun')}>
            Take a scrap
          </Button>
        </>
      ) : (
        <>
          <p>{shown.prompt}</p>
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
