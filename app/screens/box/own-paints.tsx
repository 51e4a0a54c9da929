import { useRef } from 'preact/hooks';
import { putBack } from '../../model/change-own-box.ts';
import { paintsTakenOut } from '../../model/own-box.ts';
import type { PaintCard } from '../../model/paint.ts';
import { newPaint } from '../../model/paint-draft.ts';
import { sortPaints } from '../../model/sort-paints.ts';
import type { OwnBoxState } from '../../state/own-box.ts';
import type { PaintDraftsState } from '../../state/paint-drafts.ts';
import { Button } from '../common/button.tsx';
import styles from './box-screen.module.css';
import { OwnPaintRow } from './own-paint-row.tsx';
import { PaintForm } from './paint-form.tsx';

interface OwnPaintsProps {
  ownBox: OwnBoxState;
  paintDrafts: PaintDraftsState;
  cards: readonly PaintCard[];
}

/** The paints she put in herself: to add, change, take out and put back. */
export function OwnPaints({ ownBox, paintDrafts, cards }: OwnPaintsProps) {
  const section = useRef<HTMLElement>(null);
  const drafts = paintDrafts.drafts.value;
  const out = paintsTakenOut(ownBox.box.value);
  // What was pressed goes away: a painter with keys goes on from here.
  const stay = (): void => section.current?.focus();
  const form = (key: string) => (
    <PaintForm key={key} of={key} paintDrafts={paintDrafts} ownBox={ownBox} onDone={stay} />
  );
  return (
    <section ref={section} class={styles.section} tabIndex={-1} aria-label="Paints of your own">
      <h2 class={styles.heading}>Paints of your own</h2>
      {cards.length === 0 && !drafts[newPaint] && (
        <p>A paint that is not in the list below can be added, mixed tubes too.</p>
      )}
      <ul class={styles.rows}>
        {sortPaints(cards, 'name').map((card) =>
          drafts[card.id] ? (
            <li key={card.id}>{form(card.id)}</li>
          ) : (
            <OwnPaintRow
              key={card.id}
              card={card}
              ownBox={ownBox}
              onChange={() => paintDrafts.begin(card.id)}
              onOut={stay}
            />
          ),
        )}
      </ul>
      {out.map(({ id, name }) => (
        <p key={id} class={styles.actions} role="status">
          {name} is taken out.
          <Button
            aria-label={`Put ${name} back`}
            onClick={() => {
              stay();
              void ownBox.change((before) => putBack(before, id));
            }}
          >
            Undo
          </Button>
        </p>
      ))}
      {drafts[newPaint] ? (
        form(newPaint)
      ) : (
        <div class={styles.actions}>
          <Button onClick={() => paintDrafts.begin(newPaint)}>Add a paint</Button>
        </div>
      )}
    </section>
  );
}
