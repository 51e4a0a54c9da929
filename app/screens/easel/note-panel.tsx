import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Easel } from '../../state/easel.ts';
import type { Keepsakes } from '../../state/keepsakes.ts';
import { createNoteDraft } from '../../state/note-draft.ts';
import { Button } from '../common/button.tsx';
import { Fold } from './fold.tsx';
import styles from './more-panel.module.css';

interface NotePanelProps {
  easel: Easel;
  keepsakes: Keepsakes;
  sessionId: string;
}

/** A note for the record, typed or dictated by the keyboard. */
export function NotePanel({ easel, keepsakes, sessionId }: NotePanelProps) {
  const draft = useMemo(
    () => createNoteDraft({ keepsakes, easel, sessionId }),
    [keepsakes, easel, sessionId],
  );
  useEffect(() => void draft.open(), [draft]);
  const kept = useSignal(false);
  return (
    <Fold title="Note">
      <label>
        <span class="spoken">Note for the record</span>
        <textarea
          class={styles.note}
          value={draft.text.value}
          onInput={({ currentTarget }) => {
            draft.change(currentTarget.value);
            kept.value = false;
          }}
        />
      </label>
      <Button
        large
        disabled={draft.text.value.trim() === ''}
        onClick={() => {
          kept.value = draft.keep();
        }}
      >
        Keep the note
      </Button>
      <p role="status">{kept.value && 'It stands in the record.'}</p>
    </Fold>
  );
}
