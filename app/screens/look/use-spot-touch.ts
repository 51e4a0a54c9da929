import { useRef } from 'preact/hooks';
import type { Point } from '../../model/lab.ts';
import { spotAfterKey, spotOfEvent } from './spot-of-event.ts';
import type { Look } from './use-look.ts';

type StageEvent = PointerEvent & { readonly currentTarget: HTMLElement };

/**
 * Finger, mouse and keys on the picture while she touches for value: where the finger is is shown at
 * once, where it is lifted stays marked; a second spot is compared with the first, a third starts anew.
 */
export function useSpotTouch({ marks, moving, turn }: Look) {
  const finger = useRef<number | null>(null);

  const beginIfFull = (): void => {
    if (marks.value.length >= 2) marks.value = [];
  };
  const mark = (spot: Point): void => {
    beginIfFull();
    marks.value = [...marks.value, spot];
    moving.value = null;
  };

  const down = (event: StageEvent): void => {
    if (event.button !== 0 || finger.current !== null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    finger.current = event.pointerId;
    beginIfFull();
    moving.value = spotOfEvent(event, turn.value);
  };
  const move = (event: StageEvent): void => {
    const hovers = event.pointerType === 'mouse' && marks.value.length < 2;
    const mine = finger.current === null ? hovers : finger.current === event.pointerId;
    if (mine) moving.value = spotOfEvent(event, turn.value);
  };
  const up = (event: StageEvent): void => {
    if (finger.current !== event.pointerId) return;
    finger.current = null;
    mark(spotOfEvent(event, turn.value));
  };
  const cancel = (event: StageEvent): void => {
    if (finger.current !== event.pointerId) return;
    finger.current = null;
    moving.value = null;
  };
  const leave = (): void => {
    if (finger.current === null) moving.value = null;
  };
  const keyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const from = moving.value ?? marks.value.at(-1) ?? [0.5, 0.5];
    const next = spotAfterKey(from, turn.value, event.key, event.shiftKey);
    if (next) {
      beginIfFull();
      moving.value = next;
    } else if (event.key === 'Enter' || event.key === ' ') mark(from);
    else if (event.key === 'Escape') {
      marks.value = [];
      moving.value = null;
    } else return;
    event.preventDefault();
  };

  return {
    onPointerDown: down,
    onPointerMove: move,
    onPointerUp: up,
    onPointerCancel: cancel,
    onLostPointerCapture: cancel,
    onPointerLeave: leave,
    onKeyDown: keyDown,
  };
}
