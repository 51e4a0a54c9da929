import { type Signal, useSignal } from '@preact/signals';
import {
  type AskedFor,
  askingFor,
  filterPaints,
  type PaintOrder,
  paintFilterNames,
  paintFilters,
  sortPaints,
} from '../../core/paint/list-paints.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { BoxRow, MeasureLink } from './box-row.tsx';
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

interface BoxFiltersProps {
  cards: readonly PaintCard[];
  /** How many are shown now. */
  left: number;
  order: Signal<PaintOrder>;
  asked: Signal<AskedFor>;
}

const orders = [
  ['hue', 'By hue'],
  ['dark', 'Darkest first'],
  ['name', 'By name'],
] as const;

/** Order and filters; each choice says how many paints it leaves. */
function BoxFilters({ cards, left, order, asked }: BoxFiltersProps) {
  const set = Object.keys(asked.value).length;
  return (
    <div class="stack">
      <ChoiceRow
        label="Order"
        choices={orders}
        chosen={order.value}
        onChoose={(value) => {
          order.value = value;
        }}
      />
      <details>
        <summary class={styles.summary}>
          Filters: {left} of {cards.length} shown{set > 0 && `, ${set} set`}
        </summary>
        <div class="stack">
          {paintFilterNames.map((name) => {
            const { title, choices } = paintFilters[name];
            const choose = (value: string | undefined): void => {
              asked.value = askingFor(asked.value, name, value);
            };
            const rows = [[undefined, 'any'] as const, ...choices].map(([value, text]) => ({
              value,
              text,
              leaves: filterPaints(cards, askingFor(asked.value, name, value)).length,
            }));
            return (
              <fieldset key={name} class={styles.filter}>
                <legend class={styles.title}>{title}</legend>
                {rows.map(({ value, text, leaves }) => (
                  <button
                    key={text}
                    type="button"
                    class={styles.choice}
                    aria-pressed={asked.value[name] === value}
                    disabled={leaves === 0 && value !== undefined && asked.value[name] !== value}
                    onClick={() => choose(value)}
                  >
                    {text} <span class={styles.count}>{leaves}</span>
                  </button>
                ))}
              </fieldset>
            );
          })}
        </div>
      </details>
    </div>
  );
}
