import type { Signal } from '@preact/signals';
import {
  type AskedFor,
  askingFor,
  filterPaints,
  paintFilterNames,
  paintFilters,
} from '../../model/filter-paints.ts';
import type { PaintCard } from '../../model/paint.ts';
import type { PaintOrder } from '../../model/sort-paints.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import styles from './box-filters.module.css';

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
export function BoxFilters({ cards, left, order, asked }: BoxFiltersProps) {
  const set = Object.keys(asked.value).length;
  return (
    <div class={styles.filters}>
      <ChoiceRow
        label="Order"
        choices={orders}
        chosen={order.value}
        onChoose={(value) => {
          order.value = value;
        }}
      />
      <details class={styles.more}>
        <summary class={styles.summary}>
          Filters: {left} of {cards.length} shown{set > 0 && `, ${set} set`}
        </summary>
        <div class={styles.all}>
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
