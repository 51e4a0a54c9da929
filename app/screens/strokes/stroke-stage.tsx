import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { Point } from '../../model/lab.ts';
import {
  type LooseShape,
  shapeAfterKey,
  startShape,
  strokeOfShape,
} from '../../model/loose-shape.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import { DrawnStroke } from './drawn-stroke.tsx';
import styles from './stage.module.css';
import { useStroke } from './use-stroke.ts';

interface StrokeStageProps {
  /** What a stroke does, for a screen reader. */
  label: string;
  /** Diameter of the brush, px of the picture; 0 to draw round something. */
  brushPx: number;
  size: PixelSize;
  hintId: string;
  onStroke: (path: readonly Point[]) => void;
  /** Drawn under her stroke. */
  children?: ComponentChildren;
}

/** Lies over the picture: she draws on it with finger or mouse, or lays an oval or a dab on it by keys. */
export function StrokeStage({
  label,
  brushPx,
  size,
  hintId,
  onStroke,
  children,
}: StrokeStageProps) {
  const { path, handlers } = useStroke(onStroke);
  const shape = useSignal<LooseShape | null>(null);
  const isCircle = brushPx === 0;
  const strokeOf = (laid: LooseShape): readonly Point[] =>
    isCircle ? strokeOfShape(laid) : [laid.centre];
  const keyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onStroke(strokeOf(shape.value ?? startShape));
      if (isCircle) shape.value = null;
      return;
    }
    const next = shapeAfterKey(shape.value ?? startShape, event.key, event.shiftKey);
    if (!next) return;
    event.preventDefault();
    shape.value = shape.value ? next : startShape; // the first press only shows it
  };
  const isDrawing = path.value.length > 0;
  return (
    <div
      class={styles.stage}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: an oval is laid on by keys from here
      tabIndex={0}
      aria-label={label}
      aria-describedby={hintId}
      data-testid="stroke-stage"
      onKeyDown={keyDown}
      onBlur={() => {
        shape.value = null;
      }}
      {...handlers}
    >
      {children}
      <DrawnStroke
        size={size}
        stroke={isDrawing ? path.value : shape.value ? strokeOf(shape.value) : []}
        closed={isCircle && !isDrawing}
        brushPx={brushPx}
      />
    </div>
  );
}
