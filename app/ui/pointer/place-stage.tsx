import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { Point } from '../../core/colour/lab.ts';
import styles from './stage.module.css';

interface PlaceStageProps {
  /** What a touch does, for a screen reader; the keys are told by the stage. */
  label: string;
  onPlace: (place: Point) => void;
  /** Drawn over the picture. */
  children?: ComponentChildren;
}

const within = (share: number): number => Math.min(1, Math.max(0, share));

const directions: Record<string, Point> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Lies over the picture: she touches a place (0..1 of its sides), or moves a cross by keys. */
export function PlaceStage({ label, onPlace, children }: PlaceStageProps) {
  const cross = useSignal<Point | null>(null);
  const keyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const at = cross.value ?? [0.5, 0.5];
    const way = directions[event.key];
    if (way) {
      const step = event.shiftKey ? 0.05 : 0.01;
      cross.value = [within(at[0] + step * way[0]), within(at[1] + step * way[1])];
    } else if (event.key === 'Enter' || event.key === ' ') onPlace(at);
    else return;
    event.preventDefault();
  };
  return (
    <div
      class={styles.stage}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the cross is moved by keys from here
      tabIndex={0}
      aria-label={`${label} Arrow keys move a cross, Enter touches.`}
      data-testid="place-stage"
      onKeyDown={keyDown}
      onBlur={() => {
        cross.value = null;
      }}
      onClick={(event) => {
        if (event.detail === 0) return; // not by a finger or a mouse
        const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
        cross.value = null;
        onPlace([within((event.clientX - left) / width), within((event.clientY - top) / height)]);
      }}
    >
      {children}
      {cross.value && (
        <span
          class={styles.cross}
          style={{ left: `${cross.value[0] * 100}%`, top: `${cross.value[1] * 100}%` }}
          aria-hidden="true"
        />
      )}
    </div>
  );
}
