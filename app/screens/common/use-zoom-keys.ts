import type { Signal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Point } from '../../model/lab.ts';
import { panned, wholePicture, type Zoom, zoomedAbout } from '../../model/picture-zoom.ts';
import { stageOf } from './use-zoom-gesture.ts';

type StageKey = KeyboardEvent & { readonly currentTarget: HTMLElement };

const nearer = 1.4;
const stride = 60;
const ways: Record<string, Point> = {
  ArrowLeft: [stride, 0],
  ArrowRight: [-stride, 0],
  ArrowUp: [0, stride],
  ArrowDown: [0, -stride],
};

/**
 * Plus, minus, 0 and arrows while the picture has the focus. Arrows move it only where keys brought
 * the focus there: a pedal sends arrows too, and a finger that touched the picture left it focused.
 */
export function useZoomKeys(zoom: Signal<Zoom>, ratio: number) {
  const byTouch = useRef(false);

  function after(event: StageKey): Zoom | null {
    const stage = stageOf(event.currentTarget, ratio);
    const middle: Point = [stage.width / 2, stage.height / 2];
    if (event.key === '+' || event.key === '=')
      return zoomedAbout(stage, zoom.peek(), middle, nearer);
    if (event.key === '-') return zoomedAbout(stage, zoom.peek(), middle, 1 / nearer);
    if (event.key === '0') return wholePicture;
    const way = ways[event.key];
    if (!way || byTouch.current || zoom.peek().scale === 1) return null;
    return panned(stage, zoom.peek(), way);
  }

  return {
    onPointerDownCapture: () => {
      byTouch.current = true;
    },
    onFocusOut: ({ currentTarget, relatedTarget }: FocusEvent) => {
      const stays =
        relatedTarget instanceof Node && (currentTarget as Node).contains(relatedTarget);
      if (!stays) byTouch.current = false;
    },
    onKeyDown(event: StageKey) {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const next = after(event);
      if (!next) return;
      event.preventDefault();
      event.stopPropagation(); // else the easel's own keys act as well
      zoom.value = next;
    },
  };
}
