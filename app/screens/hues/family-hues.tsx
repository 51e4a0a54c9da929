import { useSignal } from '@preact/signals';
import { cssColour } from '../../core/colour/lab.ts';
import type { ColourWish } from '../../core/decisions/plan-wishes.ts';
import { paintOfFamilies } from '../../core/decisions/wished-colours.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import type { Family, Reading } from '../../core/reading/reading.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PaintLadder } from '../../ui/controls/paint-ladder.tsx';
import styles from './hues-screen.module.css';

interface FamilyHuesProps {
  reading: Reading;
  wish: ColourWish;
  cards: readonly PaintCard[];
  onWish: (wish: ColourWish) => void;
}

/** The wish with another paint for one family, or none: every family named by its colour as it is now. */
function withPaint(
  families: readonly Family[],
  wish: ColourWish,
  family: number,
  paint: string | null,
): ColourWish {
  const before = wish.mode === 'own' ? paintOfFamilies(wish, families) : new Map<number, string>();
  const after = new Map(before);
  if (paint === null) after.delete(family);
  else after.set(family, paint);
  const hues = families.flatMap(({ id, lab }) => {
    const own = after.get(id);
    return own === undefined ? [] : [{ family: [lab[1], lab[2]] as const, paint: own }];
  });
  return hues.length > 0 ? { mode: 'own', hues } : { mode: 'photo' };
}

/** For each colour of the picture the paint whose hue it takes. */
export function FamilyHues({ reading, wish, cards, onWish }: FamilyHuesProps) {
  const { families } = reading;
  const open = useSignal<number | null>(families[0]?.id ?? null);
  const paints = wish.mode === 'own' ? paintOfFamilies(wish, families) : new Map<number, string>();
  return (
    <ul class={styles.rows}>
      {families.map(({ id, lab, name }) => {
        const card = cards.find((each) => each.id === paints.get(id));
        return (
          <li key={id}>
            <button
              type="button"
              class={styles.row}
              aria-expanded={open.value === id}
              onClick={() => {
                open.value = open.value === id ? null : id;
              }}
            >
              <span class={styles.swatches}>
                <span style={{ background: cssColour(lab) }} />
                <span style={{ background: cssColour(card?.ladder[2] ?? lab) }} />
              </span>
              <span class={styles.name}>
                {name} <span class={styles.quiet}>{card ? `in ${card.name}` : 'as the photo'}</span>
              </span>
            </button>
            {open.value === id && (
              <div class={`stack ${styles.picker}`}>
                <PaintPicker
                  cards={cards}
                  chosen={card?.id ?? null}
                  onChoose={(paint) => onWish(withPaint(families, wish, id, paint))}
                />
                <Button
                  disabled={!card}
                  onClick={() => onWish(withPaint(families, wish, id, null))}
                >
                  As the photo has it
                </Button>
              </div>
            )}
          </li>
        );
      })}
    </ul>
  );
}

interface PaintPickerProps {
  cards: readonly PaintCard[];
  chosen: string | null;
  onChoose: (paint: string) => void;
}

/** Her paints by their ladders, to choose one. */
export function PaintPicker({ cards, chosen, onChoose }: PaintPickerProps) {
  if (cards.length === 0) return <p>Laying out your paints …</p>;
  return (
    <ul class={styles.paints} aria-label="Your paints">
      {cards.map(({ id, name, ladder }) => (
        <li key={id}>
          <button
            type="button"
            class={styles.paint}
            aria-pressed={id === chosen}
            onClick={() => onChoose(id)}
          >
            <PaintLadder class={styles.ladder} ladder={ladder} />
            <span class={styles.name}>{name}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
