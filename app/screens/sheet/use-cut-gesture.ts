import { useRef } from 'preact/hooks';
import type { PixelSize } from '../../model/pixel-size.ts';
import type { Crop } from '../../model/reference.ts';
import { type GestureStart, gestureMove, type Touch } from './gesture-move.ts';
import type { StageView } from './stage-view.ts';

interface CutGesture {
  photo: PixelSize;
  crop: Crop;
  view: StageView;
  /** While the fingers move. */
  onMove: (crop: Crop) => void;
  /** When the last finger has left. */
  onSettle: (crop: Crop) => void;
}

type StageEvent = PointerEvent & { readonly currentTarget: HTMLElement };

const placeOf = (event: StageEvent): Touch => {
  const stage = event.currentTarget.getBoundingClientRect();
  return [event.clientX - stage.left, event.clientY - stage.top];
};

/** Pointer handlers for the stage. A gesture the browser takes away leaves the cut as it was before. */
export function useCutGesture(gesture: CutGesture) {
  const latest = useRef(gesture);
  latest.current = gesture;
  const fingers = useRef(new Map<number, Touch>());
  const start = useRef<GestureStart | null>(null);
  const before = useRef<Crop>(gesture.crop);
  const reached = useRef<Crop>(gesture.crop);

  /** Fingers came or went: what follows is counted from here. */
  const beginAgain = (view: StageView): void => {
    const touches = [...fingers.current.values()];
    start.current = touches.length ? { crop: reached.current, view, touches } : null;
  };

  const down = (event: StageEvent): void => {
    if (event.button !== 0 || fingers.current.size >= 2) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.focus({ preventScroll: true });
    event.preventDefault();
    if (fingers.current.size === 0) {
      before.current = latest.current.crop;
      reached.current = latest.current.crop;
    }
    fingers.current.set(event.pointerId, placeOf(event));
    beginAgain(latest.current.view);
  };

  const move = (event: StageEvent): void => {
    if (!start.current || !fingers.current.has(event.pointerId)) return;
    fingers.current.set(event.pointerId, placeOf(event));
    const { photo, onMove } = latest.current;
    reached.current = gestureMove(photo, start.current, [...fingers.current.values()]);
    onMove(reached.current);
  };

  const up = (event: StageEvent): void => {
    if (!fingers.current.delete(event.pointerId)) return;
    beginAgain(latest.current.view);
    if (fingers.current.size === 0 && reached.current !== before.current)
      latest.current.onSettle(reached.current);
  };

  const cancel = (event: StageEvent): void => {
    if (!fingers.current.has(event.pointerId)) return;
    fingers.current.clear();
    start.current = null;
    latest.current.onMove(before.current);
  };

  return {
    onPointerDown: down,
    onPointerMove: move,
    onPointerUp: up,
    onPointerCancel: cancel,
    onLostPointerCapture: cancel,
  };
}
