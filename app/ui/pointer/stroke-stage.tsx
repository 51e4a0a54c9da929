import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
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

type StageEvent = PointerEvent & { readonly currentTarget: HTMLElement };

/** How far out of the picture a stroke is followed, as a share of its sides. */
const beyond = 0.1;

function placeOf(event: StageEvent): Point {
  const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
  const held = (share: number): number => Math.min(1 + beyond, Math.max(-beyond, share));
  return [held((event.clientX - left) / width), held((event.clientY - top) / height)];
}

/** One finger draws; a second one, or the browser, takes the stroke away. Places are 0..1 of the stage. */
function useStroke(onStroke: (path: readonly Point[]) => void) {
  const path = useSignal<readonly Point[]>([]);
  const finger = useRef<number | null>(null);
  const drop = (): void => {
    finger.current = null;
    path.value = [];
  };
  return {
    path,
    handlers: {
      onPointerDown(event: StageEvent) {
        if (event.button !== 0) return;
        if (finger.current !== null) return drop();
        event.currentTarget.setPointerCapture(event.pointerId);
        event.currentTarget.focus({ preventScroll: true });
        event.preventDefault();
        finger.current = event.pointerId;
        path.value = [placeOf(event)];
      },
      onPointerMove(event: StageEvent) {
        if (finger.current !== event.pointerId) return;
        path.value = [...path.value, placeOf(event)];
      },
      onPointerUp(event: StageEvent) {
        if (finger.current !== event.pointerId) return;
        const drawn = path.value;
        drop();
        onStroke(drawn);
      },
      onPointerCancel(event: StageEvent) {
        if (finger.current === event.pointerId) drop();
      },
    },
  };
}

/** A line round something smaller than this, as a share of the picture's sides, was a slip of the finger. */
const smallestAcross = 0.03;

export const isSlip = (path: readonly Point[]): boolean =>
  ([0, 1] as const).some((axis) => {
    const places = path.map((point) => point[axis]);
    return Math.max(...places) - Math.min(...places) < smallestAcross;
  });
