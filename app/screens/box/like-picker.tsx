import { useEffect, useRef } from 'preact/hooks';
import type { PaintCard } from '../../model/paint.ts';
import { paintsToPickFrom } from '../../model/paint-draft.ts';
import { Ladder } from './ladder.tsx';
import styles from './like-picker.module.css';

interface LikePickerProps {
  /** Name of the group of choices on the page. */
  id: string;
  cards: readonly PaintCard[];
  /** Her Colour Index names and her name for the paint: what is like it stands first. */
  names: readonly string[];
  name: string;
  like: string | null;
  measured: boolean;
  problem: string | null;
  onPick: (id: string) => void;
}

/** Until it is measured a paint behaves like a built-in one: which, by their ladders. */
export function LikePicker(props: LikePickerProps) {
  const { id, cards, names, name, like, measured, problem, onPick } = props;
  const offered = paintsToPickFrom(names, name, cards);
  const picked = offered.find((card) => card.id === like);
  const details = useRef<HTMLDetailsElement>(null);
  // She has to see the list when she has to pick.
  useEffect(() => {
    if (problem && details.current) details.current.open = true;
  }, [problem]);
  return (
    <details ref={details} class={styles.picker}>
      <summary class={styles.summary}>
        {picked
          ? `Not measured: behaves like ${picked.name}`
          : measured
            ? 'Measured from a photo'
            : 'Which built-in paint does it look like?'}
      </summary>
      {problem && (
        <p class={styles.problem} role="alert">
          {problem}
        </p>
      )}
      <fieldset class={styles.list}>
        <legend class={styles.quiet}>
          Until it is measured from a photo it is mixed like the one you pick.
        </legend>
        {offered.map((card, i) => (
          <label key={card.id} class={styles.choice}>
            <input
              type="radio"
              name={`${id}-like`}
              class={styles.mark}
              aria-invalid={i === 0 && problem !== null}
              checked={card.id === like}
              onChange={() => onPick(card.id)}
            />
            <Ladder ladder={card.ladder} />
            <span>
              {card.name} <span class={styles.quiet}>{card.ci.join(', ')}</span>
            </span>
          </label>
        ))}
      </fieldset>
    </details>
  );
}
