import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Easel } from '../../state/session/easel.ts';
import {
  createNoteDraft,
  createRecordPhotos,
  type Keepsakes,
} from '../../state/session/keepsakes.ts';
import { Button } from '../../ui/controls/button.tsx';
import { TakeOrChoose } from '../../ui/controls/photo-input.tsx';
import styles from './add-keepsake.module.css';

interface KeepsakeProps {
  easel: Easel;
  keepsakes: Keepsakes;
  sessionId: string;
}

const stands = 'It stands in the record.';

/** A photo of the sheet as it is now, kept as it comes from the camera. */
export function AddPhoto({ easel, keepsakes, sessionId }: KeepsakeProps) {
  const photos = useMemo(
    () => createRecordPhotos({ keepsakes, easel, sessionId }),
    [keepsakes, easel, sessionId],
  );
  useEffect(() => void photos.open(), [photos]);
  const { value: problem } = photos.problem;
  const take = (file: File): void => void photos.take(file);
  return (
    <>
      <TakeOrChoose onFile={take} />
      {problem !== null && <p role="alert">{problem}</p>}
      <p role="status">
        {photos.keeping.value && 'The photo is being kept …'}
        {photos.stands.value && stands}
      </p>
    </>
  );
}

/** A note for the record, typed or dictated by the keyboard. */
export function AddNote({ easel, keepsakes, sessionId }: KeepsakeProps) {
  const draft = useMemo(
    () => createNoteDraft({ keepsakes, easel, sessionId }),
    [keepsakes, easel, sessionId],
  );
  useEffect(() => void draft.open(), [draft]);
  const kept = useSignal(false);
  return (
    <>
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
      <p role="status">{kept.value && stands}</p>
    </>
  );
}
