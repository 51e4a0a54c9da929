import { useSignal } from '@preact/signals';
import { type AskedFor, filterPaints } from '../../model/filter-paints.ts';
import type { PaintCard } from '../../model/paint.ts';
import { type PaintOrder, sortPaints } from '../../model/sort-paints.ts';
import type { OwnBoxState } from '../../state/own-box.ts';
import { Button } from '../common/button.tsx';
import { MeasureLink } from '../measure/measure-link.tsx';
import { BoxFilters } from './box-filters.tsx';
import { BoxRow } from './box-row.tsx';
import styles from './box-screen.module.css';

interface BoxListProps {
  ownBox: OwnBoxState;
  cards: readonly PaintCard[];
}

/** The built-in paints in the order and with the filters she likes, each with its tick. */
export function BoxList({ ownBox, cards }: BoxListProps) {
  const order = useSignal<PaintOrder>('hue');
  const asked = useSignal<AskedFor>({});
  const left = sortPaints(filterPaints(cards, asked.value), order.value);
  return (
    <section class={styles.section} aria-label="Built-in paints">
      <h2 class={styles.heading}>Pigments with published optics</h2>
      <BoxFilters cards={cards} left={left.length} order={order} asked={asked} />
      {cards.length === 0 && <p role="status">Mixing the ladders …</p>}
      {cards.length > 0 && left.length === 0 && (
        <p>
          No paint is like that: drop a filter.{' '}
          <Button
            onClick={() => {
              asked.value = {};
            }}
          >
            Show all {cards.length}
          </Button>
        </p>
      )}
      <ul class={styles.rows}>
        {left.map((card) => (
          <BoxRow key={card.id} card={card} ownBox={ownBox}>
            <span>
              <MeasureLink card={card} />
            </span>
          </BoxRow>
        ))}
      </ul>
    </section>
  );
}
