import { useSignal } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import {
  frameTo,
  movedFrame,
  type PatchFrame,
  resizedFrame,
} from '../../core/paint/measure/measured-photo.ts';
import type { DraftPatch } from '../../core/paint/measure/paint-measure.ts';
import type { MeasuringPhoto } from '../../state/paints/paint-measuring.ts';
import { arrowDirections, isShortcut } from '../../ui/pointer/stage-keys.ts';
import { placeInShares, type StageEvent, usePointers } from '../../ui/pointer/use-pointers.ts';
import styles from './patch-stage.module.css';

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

interface PatchFrameBoxProps {
  frame: PatchFrame;
  number: number;
  /** What it holds, in words; null: not used. */
  holds: string | null;
  onMove: (frame: PatchFrame) => void;
  onRemove: () => void;
}

const step = 0.005;
const growth = 1.06;

/** The frame after a key: arrows move it, with Shift they make it wider, narrower, higher, lower. */
function afterKey(frame: PatchFrame, key: string, shift: boolean): PatchFrame | null {
  const direction = arrowDirections[key];
  if (!direction) return null;
  const [right, down] = direction;
  if (!shift) return movedFrame(frame, step * right, step * down);
  return resizedFrame(frame, growth ** right, growth ** -down);
}

/** Where a pointer at a frame is, 0..1 of the photo. */
const placeOnPhoto = (event: StageEvent): Point =>
  placeInShares(event, Number.POSITIVE_INFINITY, event.currentTarget.parentElement ?? undefined);

/** A frame on the photo: dragged, made larger by its corner, moved by keys. */
function PatchFrameBox({ frame, number, holds, onMove, onRemove }: PatchFrameBoxProps) {
  const isHeld = useSignal(false);
  const start = useRef<{ place: Point; frame: PatchFrame; corner: boolean } | null>(null);
  const letGo = (): void => {
    isHeld.value = false;
    start.current = null;
  };
  const { handlers } = usePointers({
    most: 1,
    captures: true,
    placeOf: placeOnPhoto,
    onDown({ target }, place) {
      const corner = (target as HTMLElement).dataset.corner !== undefined;
      start.current = { place, frame, corner };
      isHeld.value = true;
      return true;
    },
    onMove(_event, [x, y]) {
      if (!start.current) return;
      const { place, frame: before, corner } = start.current;
      onMove(corner ? frameTo(before, [x, y]) : movedFrame(before, x - place[0], y - place[1]));
    },
    onUp: letGo,
    onCancel: letGo,
  });
  return (
    <button
      type="button"
      class={styles.frame}
      data-held={isHeld.value || undefined}
      data-unused={holds === null || undefined}
      aria-label={`Frame ${number}, ${holds ?? 'not used'}. Arrow keys move it, with Shift they change its size, Delete takes it away.`}
      style={{
        left: `${frame.left * 100}%`,
        top: `${frame.top * 100}%`,
        width: `${frame.width * 100}%`,
        height: `${frame.height * 100}%`,
      }}
      {...handlers}
      onKeyDown={(event) => {
        if (isShortcut(event)) return;
        const next = afterKey(frame, event.key, event.shiftKey);
        if (next) onMove(next);
        else if (event.key === 'Delete' || event.key === 'Backspace') onRemove();
        else return;
        event.preventDefault();
      }}
    >
      <span class={styles.number} aria-hidden="true">
        {number}
      </span>
      <span class={styles.corner} data-corner="" aria-hidden="true" />
    </button>
  );
}

/** A bitmap on a canvas of its size. */
function PhotoCanvas({ photo, label }: { photo: ImageBitmap; label: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element || photo.width === 0) return; // a bitmap that was let go has no size
    element.width = photo.width;
    element.height = photo.height;
    element.getContext('2d')?.drawImage(photo, 0, 0);
  }, [photo]);
  return <canvas ref={canvas} role="img" aria-label={label} />;
}
