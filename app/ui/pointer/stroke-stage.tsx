import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { Point } from '../../core/colour/lab.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import {
  type LooseShape,
  shapeAfterKey,
  startShape,
  strokeOfShape,
} from '../picture/loose-shape.ts';
import { DrawnStroke } from './drawn-stroke.tsx';
import styles from './stage.module.css';
import { Stage } from './stage.tsx';
import { isShortcut } from './stage-keys.ts';
import { type Pointers, placeInShares, usePointers } from './use-pointers.ts';

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
    if (isShortcut(event)) return;
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
    <Stage
      class={styles.over}
      label={label}
      aria-describedby={hintId}
      name="stroke-stage"
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
    </Stage>
  );
}

/** How far out of the picture a stroke is followed, as a share of its sides. */
const beyond = 0.1;

/** One finger draws; a second one, or the browser, takes the stroke away. Places are 0..1 of the stage. */
function useStroke(onStroke: (path: readonly Point[]) => void) {
  const path = useSignal<readonly Point[]>([]);
  const drop = (): void => {
    pointers.places.clear();
    path.value = [];
  };
  const pointers: Pointers = usePointers({
    most: 1,
    captures: true,
    placeOf: (event) => placeInShares(event, beyond),
    onDown(event, place) {
      event.currentTarget.focus({ preventScroll: true });
      event.preventDefault();
      path.value = [place];
      return true;
    },
    onOneMore: drop,
    onMove(_event, place) {
      path.value = [...path.value, place];
    },
    onUp() {
      const drawn = path.value;
      drop();
      onStroke(drawn);
    },
    onCancel: drop,
  });
  return { path, handlers: pointers.handlers };
}

/** A line round something smaller than this, as a share of the picture's sides, was a slip of the finger. */
const smallestAcross = 0.03;

export const isSlip = (path: readonly Point[]): boolean =>
  ([0, 1] as const).some((axis) => {
    const places = path.map((point) => point[axis]);
    return Math.max(...places) - Math.min(...places) < smallestAcross;
  });
