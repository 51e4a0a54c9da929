import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { Point } from '../../core/colour/lab.ts';
import styles from './stage.module.css';
import { Stage } from './stage.tsx';
import { arrowDirections, isShortcut, movePlace } from './stage-keys.ts';
import { placeInShares } from './use-pointers.ts';

interface PlaceStageProps {
  /** What a touch does, for a screen reader; the keys are told by the stage. */
  label: string;
  onPlace: (place: Point) => void;
  /** Drawn over the picture. */
  children?: ComponentChildren;
}

/** Lies over the picture: she touches a place (0..1 of its sides), or moves a cross by keys. */
export function PlaceStage({ label, onPlace, children }: PlaceStageProps) {
  const cross = useSignal<Point | null>(null);
  const keyDown = (event: KeyboardEvent): void => {
    if (isShortcut(event)) return;
    const place = cross.value ?? [0.5, 0.5];
    const direction = arrowDirections[event.key];
    if (direction) cross.value = movePlace(place, direction, event.shiftKey ? 0.05 : 0.01);
    else if (event.key === 'Enter' || event.key === ' ') onPlace(place);
    else return;
    event.preventDefault();
  };
  return (
    <Stage
      class={styles.over}
      label={`${label} Arrow keys move a cross, Enter touches.`}
      name="place-stage"
      onKeyDown={keyDown}
      onBlur={() => {
        cross.value = null;
      }}
      onClick={(event) => {
        if (event.detail === 0) return; // not by a finger or a mouse
        cross.value = null;
        onPlace(placeInShares(event));
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
    </Stage>
  );
}
