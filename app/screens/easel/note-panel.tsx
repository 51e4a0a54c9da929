import { useSignal } from '@preact/signals';
import type { Easel } from '../../state/easel.ts';
import { Button } from '../common/button.tsx';
import { Fold } from './fold.tsx';
import styles from './more-panel.module.css';

/** A note for the record, typed or dictated by the keyboard. */
export function NotePanel({ easel }: { easel: Easel }) {
  const text = useSignal('');
  const kept = useSignal(false);
  return (
    <Fold title="Note">
      <label>
        <span class="spoken">Note for the record</span>
        <textarea
          class={styles.note}
          value={text.value}
          onInput={({ currentTarget }) => {
            text.value = currentTarget.value;
            kept.value = false;
          }}
        />
      </label>
      <Button
        large
        disabled={text.value.trim() === ''}
        onClick={() => {
          easel.tell({ kind: 'note', text: text.value.trim() });
          text.value = '';
          kept.value = true;
        }}
      >
        Keep the note
      </Button>
      <p role="status">{kept.value && 'It stands in the record.'}</p>
    </Fold>
  );
}
