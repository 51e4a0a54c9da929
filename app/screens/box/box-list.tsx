import { type Signal, useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import {
  type AskedFor,
  askingFor,
  filterPaints,
  findPaints,
  type PaintOrder,
  paintFilterNames,
  paintFilters,
  sortPaints,
} from '../../core/paint/list-paints.ts';
import { tickedPaints } from '../../core/paint/own-box.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import { formatCount } from '../../core/words/numbers.ts';
import { choiceInWords, filterTitles } from '../../core/words/paint/paint-traits.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { BoxRow } from './box-row.tsx';
import styles from './box-screen.module.css';

interface BoxListProps {
  ownBox: OwnBoxState;
  cards: readonly PaintCard[];
}

/**
 * The built-in paints in the order and with the filters she likes, each with its tick: first those most boxes hold and
 * those she owns, the others when she looks for one.
 */
export function BoxList({ ownBox, cards }: BoxListProps) {
  const order = useSignal<PaintOrder>('hue');
  const asked = useSignal<AskedFor>({});
  const typed = useSignal('');
  const showsAll = useSignal(false);
  // A paint once ticked stays where it is, also when the tick is taken back.
  const seen = useRef(new Set<string>());
  for (const id of tickedPaints(ownBox.box.value) ?? []) seen.current.add(id);
  const isFirst = ({ id, placeAmongOwned }: PaintCard): boolean =>
    placeAmongOwned !== undefined || seen.current.has(id);
  const isLooking = typed.value.trim() !== '' || Object.keys(asked.value).length > 0;
  const found = filterPaints(findPaints(cards, typed.value), asked.value);
  const shown = isLooking || showsAll.value ? found : found.filter(isFirst);
  const others = found.length - shown.length;
  const showAll = (): void => {
    asked.value = {};
    typed.value = '';
  };
  return (
    <section class={styles.section} aria-label="Built-in paints">
      <h2 class={styles.heading}>
        {isLooking ? 'Paints found' : showsAll.value ? 'All paints' : 'What most painters own'}
      </h2>
      <div class={styles.finding}>
        <label class={styles.search}>
          <span class="spoken">Find a paint</span>
          <input
            type="search"
            class={styles.typed}
            placeholder="Find: ultramarine, PB29"
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            value={typed.value}
            onInput={(event) => {
              typed.value = event.currentTarget.value;
            }}
          />
        </label>
        <BoxFilters cards={cards} left={found.length} order={order} asked={asked} />
      </div>
      {cards.length === 0 && <p role="status">Getting the colours ready …</p>}
      {cards.length > 0 && found.length === 0 && (
        <p role="status">
          No paint here is called that or is like that. Add it as a paint of your own, or{' '}
          <Button onClick={showAll}>Show them all</Button>
        </p>
      )}
      <ul class={styles.rows}>
        {sortPaints(shown, order.value).map((card) => (
          <BoxRow key={card.id} card={card} ownBox={ownBox} />
        ))}
      </ul>
      {others > 0 && (
        <p>
          <Button
            onClick={() => {
              showsAll.value = true;
            }}
          >
            Show {others} more paints
          </Button>
        </p>
      )}
    </section>
  );
}

interface BoxFiltersProps {
  cards: readonly PaintCard[];
  /** How many are found. */
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
  const open = useSignal(false);
  const set = Object.keys(asked.value).length;
  return (
    <details
      class={styles.sorting}
      onToggle={(event) => {
        open.value = event.currentTarget.open;
      }}
    >
      <summary class={styles.summary}>
        Sort and filter
        {set > 0 && `: ${formatCount(set, 'filter')}, ${left} of ${cards.length} paints`}
      </summary>
      <div class="stack">
        <ChoiceRow
          label="Order"
          choices={orders}
          chosen={order.value}
          onChoose={(value) => {
            order.value = value;
          }}
        />
        {(open.value ? paintFilterNames : []).map((name) => {
          const { choices } = paintFilters[name];
          const choose = (value: string | undefined): void => {
            asked.value = askingFor(asked.value, name, value);
          };
          const rows = [undefined, ...choices].map((value) => ({
            value,
            text: value === undefined ? 'any' : choiceInWords(name, value),
            leaves: filterPaints(cards, askingFor(asked.value, name, value)).length,
          }));
          return (
            <fieldset key={name} class={styles.filter}>
              <legend class={styles.title}>{filterTitles[name]}</legend>
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
  );
}
