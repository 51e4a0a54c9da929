import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { familyNameIn } from '../../core/plan/family-name-in.ts';
import { unitOf } from '../../core/plan/plan.ts';
import type { Easel } from '../../state/session/easel.ts';
import {
  createNoteDraft,
  createRecordPhotos,
  type Keepsakes,
} from '../../state/session/keepsakes.ts';
import { Button } from '../../ui/controls/button.tsx';
import { TakeOrChoose } from '../../ui/controls/photo-input.tsx';
import { MixRows } from '../../ui/mixes/mix-rows.tsx';
import { Fold } from './fold.tsx';
import styles from './more-panels.module.css';

interface PhotoPanelProps {
  easel: Easel;
  keepsakes: Keepsakes;
  sessionId: string;
}

/** A photo of the sheet as it is now, kept as it comes from the camera. */
export function PhotoPanel({ easel, keepsakes, sessionId }: PhotoPanelProps) {
  const photos = useMemo(
    () => createRecordPhotos({ keepsakes, easel, sessionId }),
    [keepsakes, easel, sessionId],
  );
  useEffect(() => void photos.open(), [photos]);
  const { value: problem } = photos.problem;
  const take = (file: File): void => void photos.take(file);
  return (
    <Fold title="Photo for the record">
      <TakeOrChoose onFile={take} />
      {problem !== null && <p role="alert">{problem}</p>}
      <p role="status">
        {photos.keeping.value && 'The photo is being kept …'}
        {photos.stands.value && 'It stands in the record.'}
      </p>
    </Fold>
  );
}

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

/** What she really mixed, where it is not what was planned: it stands in the record. */
export function MixPanel({ easel }: { easel: Easel }) {
  const { value: desk } = easel.desk;
  const { value: step } = easel.step;
  const mixes = easel.record.value?.mixes.filter(({ id }) => step?.mixes.includes(id)) ?? [];
  if (!desk || mixes.length === 0) return null;
  const familyName = familyNameIn(desk.plan, desk.seen.reading);
  return (
    <Fold title="Mixed otherwise">
      <p class="quiet">
        As you really mixed it, for the record and for next time. The picture stays as planned.
      </p>
      {mixes.map((mix) => (
        <MixRows
          key={mix.id}
          mix={mix}
          title={`For the ${familyName(mix.family)}`}
          palette={desk.plan.palette}
          onChange={(amounts) =>
            easel.tell({ kind: 'mix-changed', mix: mix.id, ...amounts, ...unitOf(desk.plan) })
          }
        />
      ))}
    </Fold>
  );
}
