import { takenOut } from '../../model/change-own-box.ts';
import type { PaintCard } from '../../model/paint.ts';
import type { OwnBoxState } from '../../state/own-box.ts';
import { Button } from '../common/button.tsx';
import { MeasureLink } from '../measure/measure-link.tsx';
import { BoxRow } from './box-row.tsx';
import styles from './box-screen.module.css';

interface OwnPaintRowProps {
  card: PaintCard;
  ownBox: OwnBoxState;
  onChange: () => void;
  onOut: () => void;
}

/** A paint of her own: how far its colour can be trusted, and what can be done with it. */
export function OwnPaintRow({ card, ownBox, onChange, onOut }: OwnPaintRowProps) {
  const { optics } = card;
  const behaves =
    optics?.from === 'like' && ownBox.cards.value.find(({ id }) => id === optics.id)?.name;
  return (
    <BoxRow card={card} ownBox={ownBox}>
      {behaves && <span>Not measured: behaves like {behaves}.</span>}
      {optics?.from === 'measured' && <span>Measured from a photo. {optics.why}</span>}
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
