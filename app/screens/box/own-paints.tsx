import { useRef } from 'preact/hooks';
import { sortPaints } from '../../core/paint/list-paints.ts';
import { paintsTakenOut, putBack, takenOut } from '../../core/paint/own-box.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import { newPaint } from '../../core/paint/paint-draft.ts';
import { opticsInWords, sureWhyInWords } from '../../core/words/paint/measured-paint.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import type { PaintDraftsState } from '../../state/paints/paint-drafts.ts';
import { Button } from '../../ui/controls/button.tsx';
import { BoxRow, MeasureLink } from './box-row.tsx';
import styles from './box-screen.module.css';
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
    <PaintForm key={key} draftKey={key} paintDrafts={paintDrafts} ownBox={ownBox} onDone={stay} />
  );
  return (
    <section ref={section} class={styles.section} tabIndex={-1} aria-label="Paints of your own">
      <h2 class={styles.heading}>Paints of your own</h2>
      {cards.length === 0 && !drafts[newPaint] && (
        <p>A paint that is not in the list can be added, convenience mixes included.</p>
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

interface OwnPaintRowProps {
  card: PaintCard;
  ownBox: OwnBoxState;
  onChange: () => void;
  onOut: () => void;
}

/** A paint of her own: how far its colour can be trusted, and what can be done with it. */
function OwnPaintRow({ card, ownBox, onChange, onOut }: OwnPaintRowProps) {
  const { optics } = card;
  const behaves =
    optics?.from === 'like' && ownBox.cards.value.find(({ id }) => id === optics.id)?.name;
  const note = behaves
    ? opticsInWords(behaves)
    : optics?.from === 'measured'
      ? opticsInWords(null)
      : undefined;
  return (
    <BoxRow card={card} ownBox={ownBox} note={note}>
      {optics?.from === 'measured' && <p>{sureWhyInWords(optics.why)}</p>}
      <span class={styles.actions}>
        <Button aria-label={`Change ${card.name}`} onClick={onChange}>
          Change
        </Button>
        <MeasureLink card={card} />
        <Button
          aria-label={`Take out ${card.name}`}
          onClick={() => {
            onOut();
            void ownBox.change((before) => takenOut(before, card.id));
          }}
        >
          Take out
        </Button>
      </span>
    </BoxRow>
  );
}
