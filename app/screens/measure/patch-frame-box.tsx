import { useRef } from 'preact/hooks';
import type { Point } from '../../model/lab.ts';
import { frameTo, movedFrame, type PatchFrame, resizedFrame } from '../../model/patch-frame.ts';
import styles from './patch-stage.module.css';

interface PatchFrameBoxProps {
  frame: PatchFrame;
  number: number;
  /** What it holds, in words; null: not used. */
  holds: string | null;
  onMove: (frame: PatchFrame) => void;
  onRemove: () => void;
}

const directions: Record<string, Point> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const step = 0.005;
const growth = 1.06;

/** The frame after a key: arrows move it, with Shift they make it wider, narrower, higher, lower. */
function afterKey(frame: PatchFrame, key: string, shift: boolean): PatchFrame | null {
  const way = directions[key];
  if (!way) return null;
  if (!shift) return movedFrame(frame, step * way[0], step * way[1]);
  return resizedFrame(frame, growth ** way[0], growth ** -way[1]);
}

/** A frame on the photo: dragged, made larger by its corner, moved by keys. */
export function PatchFrameBox({ frame, number, holds, onMove, onRemove }: PatchFrameBoxProps) {
  const held = useRef<{ from: Point; frame: PatchFrame; corner: boolean } | null>(null);
  const placeOf = (event: PointerEvent & { currentTarget: HTMLElement }): Point => {
    const stage = event.currentTarget.parentElement?.getBoundingClientRect();
    if (!stage) return [0, 0];
    return [(event.clientX - stage.left) / stage.width, (event.clientY - stage.top) / stage.height];
  };
  return (
    <button
      type="button"
      class={styles.frame}
      data-unused={holds === null || undefined}
      aria-label={`Frame ${number}, ${holds ?? 'not used'}. Arrow keys move it, with Shift they change its size, Delete takes it away.`}
      style={{
        left: `${frame.left * 100}%`,
        top: `${frame.top * 100}%`,
        width: `${frame.width * 100}%`,
        height: `${frame.height * 100}%`,
      }}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        event.currentTarget.dataset.held = '';
        const corner = (event.target as HTMLElement).dataset.corner !== undefined;
        held.current = { from: placeOf(event), frame, corner };
      }}
      onPointerMove={(event) => {
        const start = held.current;
        if (!start) return;
        const place = placeOf(event);
        onMove(
          start.corner
            ? frameTo(start.frame, place)
            : movedFrame(start.frame, place[0] - start.from[0], place[1] - start.from[1]),
        );
      }}
      onLostPointerCapture={(event) => {
        held.current = null;
        delete event.currentTarget.dataset.held;
      }}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return;
        const next = afterKey(frame, event.key, event.shiftKey);
        if (next) onMove(next);
        else if (event.key === 'Delete' || event.key === 'Backspace') onRemove();
        else return;
        event.preventDefault();
      }}
    >
      <span class={styles.number} aria-hidden="true">
        {number}
      </span>
      <span class={styles.corner} data-corner="" aria-hidden="true" />
    </button>
  );
}
