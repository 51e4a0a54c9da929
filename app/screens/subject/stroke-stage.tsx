import { useSignal } from '@preact/signals';
import type { Point } from '../../model/lab.ts';
import {
  type LooseShape,
  shapeAfterKey,
  startShape,
  strokeOfShape,
} from '../../model/loose-shape.ts';
import type { PixelSize } from '../../model/reference.ts';
import type { LineStretch, SubjectMode } from '../../model/subject.ts';
import { DrawnLine } from './drawn-line.tsx';
import styles from './stroke-stage.module.css';
import { useStroke } from './use-stroke.ts';

interface StrokeStageProps {
  mode: SubjectMode;
  /** Diameter, px of the picture. */
  brushPx: number;
  size: PixelSize;
  line: readonly LineStretch[];
  hintId: string;
  onStroke: (path: readonly Point[]) => void;
}

/** Lies over the picture: she draws on it with finger or mouse, or lays an oval on it by keys. */
export function StrokeStage({ mode, brushPx, size, line, hintId, onStroke }: StrokeStageProps) {
  const { path, handlers } = useStroke(onStroke);
  const shape = useSignal<LooseShape | null>(null);
  const keyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      const laid = shape.value ?? startShape;
      onStroke(mode === 'circle' ? strokeOfShape(laid) : [laid.centre]);
      if (mode === 'circle') shape.value = null;
      return;
    }
    const next = shapeAfterKey(shape.value ?? startShape, event.key, event.shiftKey);
    if (!next) return;
    event.preventDefault();
    shape.value = shape.value ? next : startShape; // the first press only shows it
  };
  const laid =
    shape.value && (mode === 'circle' ? strokeOfShape(shape.value) : [shape.value.centre]);
  return (
    <div
      class={styles.stage}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: an oval is laid on by keys from here
      tabIndex={0}
      aria-label={mode === 'circle' ? 'Draw round the subject' : 'Paint over the subject'}
      aria-describedby={hintId}
      data-testid="stroke-stage"
      onKeyDown={keyDown}
      onBlur={() => {
        shape.value = null;
      }}
      {...handlers}
    >
      <DrawnLine
        size={size}
        line={line}
        stroke={path.value.length > 0 ? path.value : (laid ?? [])}
        closed={mode === 'circle' && path.value.length === 0}
        brushPx={mode === 'circle' ? 0 : brushPx}
      />
    </div>
  );
}
