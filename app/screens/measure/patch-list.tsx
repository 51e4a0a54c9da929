import { useId } from 'preact/hooks';
import type { DraftPatch } from '../../model/measure-draft.ts';
import { Button } from '../common/button.tsx';
import select from '../common/select.module.css';
import { type HoldingChoices, holdingValue, meaningOf } from './holding-words.ts';
import styles from './patch-list.module.css';

interface PatchListProps {
  draft: readonly DraftPatch[];
  groups: readonly HoldingChoices[];
  onChange: (draft: readonly DraftPatch[]) => void;
}

/** What each frame holds. */
export function PatchList({ draft, groups, onChange }: PatchListProps) {
  const listId = useId();
  return (
    <ol class={styles.rows}>
      {draft.map((patch, n) => (
        <li key={n} class={styles.row}>
          <div class={styles.field}>
            <label for={`${listId}-${n}`}>Frame {n + 1}</label>
            <select
              id={`${listId}-${n}`}
              class={select.select}
              value={holdingValue(patch.is)}
              onChange={(event) => {
                const is = meaningOf(event.currentTarget.value);
                onChange(draft.map((each, i) => (i === n ? { ...each, is } : each)));
              }}
            >
              {groups.map(({ name, choices }) => (
                <optgroup key={name} label={name}>
                  {choices.map(({ is, text }) => (
                    <option key={text} value={holdingValue(is)}>
                      {text}
                    </option>
                  ))}
                </optgroup>
              ))}
            </select>
          </div>
          <Button
            aria-label={`Take frame ${n + 1} away`}
            onClick={() => onChange(draft.filter((_, i) => i !== n))}
          >
            Take away
          </Button>
        </li>
      ))}
    </ol>
  );
}
