import { meanwhile } from '../../model/session/meanwhile.ts';
import type { Desk, Easel } from '../../state/easel.ts';
import styles from './meanwhile-list.module.css';
import { PressButton } from './press-button.tsx';

interface MeanwhileListProps {
  easel: Easel;
  desk: Desk;
  /** Shows the edges over the picture. */
  onEdges: () => void;
}

/** What can be done while the sheet dries: elsewhere on it, at the palette, with the eyes. */
export function MeanwhileList({ easel, desk, onEdges }: MeanwhileListProps) {
  const { steps } = desk.plan;
  const { elsewhere, mixFor } = meanwhile(steps, desk.seen.reading.borders, easel.session.value);
  const titleOf = (key: string): string => steps.find((step) => step.key === key)?.title ?? '';
  return (
    <section class={styles.list} aria-label="While it dries" data-testid="meanwhile">
      <h2 class={styles.name}>While it dries</h2>
      <ul class={styles.items}>
        {elsewhere.slice(0, 3).map((key) => (
          <li key={key}>
            <PressButton
              onAct={() => easel.tell({ kind: 'step-begun', key, aside: true })}
            >{`Paint elsewhere: ${titleOf(key)}`}</PressButton>
          </li>
        ))}
        {elsewhere.length === 0 && (
          <li>Nothing else can be painted: all that is left touches the wet.</li>
        )}
        {mixFor !== null && <li>Mix the puddles for: {titleOf(mixFor)}.</li>}
        <li>
          <button type="button" class={styles.look} onClick={onEdges}>
            Look at the edges to come
          </button>
        </li>
      </ul>
    </section>
  );
}
