import type { Painting } from '../../model/painting.ts';
import { lastDecision } from '../../model/standing-decisions.ts';
import { subjectDecisions } from '../../model/subject-strokes.ts';
import { linkTo } from '../../state/route.ts';
import type { Studio } from '../../state/studio.ts';
import { Button, buttonClass } from '../common/button.tsx';
import styles from './changes-panel.module.css';

/** Whether the ground of the subject becomes one plain wash; without a subject, the way to one. */
export function GroundChoice({ studio, painting }: { studio: Studio; painting: Painting }) {
  const { decisions } = painting;
  if (subjectDecisions(decisions).length === 0)
    return (
      <p class={styles.ground}>
        Once you have drawn round the subject, all the rest can become one plain wash.
        <a class={buttonClass()} href={linkTo(painting.id, 'subject')}>
          Draw round the subject
        </a>
      </p>
    );
  const plain = lastDecision(decisions, 'ground')?.plain ?? false;
  return (
    <div class={styles.ground}>
      <Button
        aria-pressed={plain}
        onClick={() => void studio.decide({ kind: 'ground', plain: !plain })}
      >
        The ground as one plain wash
      </Button>
      {plain && (
        <p class={styles.quiet}>
          Values, edges and washes follow. In colour and grey the picture keeps its own ground, so
          that the subject’s line is always found in it.
        </p>
      )}
    </div>
  );
}
