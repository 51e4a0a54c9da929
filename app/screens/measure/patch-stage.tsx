import type { DraftPatch } from '../../model/measure-draft.ts';
import type { MeasuringPhoto } from '../../state/paint-measuring.ts';
import { PatchFrameBox } from './patch-frame-box.tsx';
import styles from './patch-stage.module.css';
import { PhotoCanvas } from './photo-canvas.tsx';

interface PatchStageProps {
  photo: MeasuringPhoto;
  draft: readonly DraftPatch[];
  inWords: (patch: DraftPatch) => string | null;
  onChange: (draft: readonly DraftPatch[]) => void;
}

/** The photo with a numbered frame on each patch, and rings where bare paper was seen. */
export function PatchStage({ photo, draft, inWords, onChange }: PatchStageProps) {
  const { preview, paper } = photo;
  return (
    <div class={styles.surround}>
      <div class={styles.stage} style={{ '--ratio': preview.width / preview.height }}>
        <PhotoCanvas photo={preview} label="Your photo of the painted patches" />
        {paper.map(([x, y]) => (
          <span
            key={`${x} ${y}`}
            class={styles.paper}
            style={{ left: `${x * 100}%`, top: `${y * 100}%` }}
            data-testid="paper-spot"
          />
        ))}
        {draft.map((patch, n) => (
          <PatchFrameBox
            key={n}
            frame={patch.frame}
            number={n + 1}
            holds={inWords(patch)}
            onMove={(frame) =>
              onChange(draft.map((each, i) => (i === n ? { ...each, frame } : each)))
            }
            onRemove={() => onChange(draft.filter((_, i) => i !== n))}
          />
        ))}
      </div>
    </div>
  );
}
