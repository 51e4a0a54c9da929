import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Point } from '../../model/lab.ts';

type StageEvent = PointerEvent & { readonly currentTarget: HTMLElement };

/** How far out of the picture a stroke is followed, as a share of its sides. */
const beyond = 0.1;

function placeOf(event: StageEvent): Point {
  const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
  const held = (share: number): number => Math.min(1 + beyond, Math.max(-beyond, share));
  return [held((event.clientX - left) / width), held((event.clientY - top) / height)];
}

/** One finger draws; a second one, or the browser, takes the stroke away. Places are 0..1 of the stage. */
export function useStroke(onStroke: (path: readonly Point[]) => void) {
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
