import { useRef } from 'preact/hooks';
import type { PixelSize } from '../../core/raster/size.ts';
import { boxOf, type CropBox, movedCrop, resizedCrop } from '../../core/reference/move-crop.ts';
import { type Crop, roomOf } from '../../core/reference/reference.ts';

interface CutGesture {
  photo: PixelSize;
  crop: Crop;
  view: CutView;
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
  const beginAgain = (view: CutView): void => {
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
    reached.current = moveCutByFingers(photo, start.current, [...fingers.current.values()]);
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

/** A finger on the stage, px. */
type Touch = readonly [x: number, y: number];

/** Where a gesture began: the cut, how it lay on the stage, and the one or two fingers. */
interface GestureStart {
  readonly crop: Crop;
  readonly view: CutView;
  readonly touches: readonly Touch[];
}

const middle = (touches: readonly Touch[]): Touch => [
  touches.reduce((sum, touch) => sum + touch[0], 0) / touches.length,
  touches.reduce((sum, touch) => sum + touch[1], 0) / touches.length,
];

const apart = (a: Touch, b: Touch): number => Math.max(1, Math.hypot(a[0] - b[0], a[1] - b[1]));

/** How near to a corner of the frame a finger takes hold of it, px. */
const reach = 28;

function holdsCorner({ frame }: CutView, [x, y]: Touch): boolean {
  const across = Math.min(Math.abs(x - frame.x), Math.abs(x - frame.x - frame.width));
  const down = Math.min(Math.abs(y - frame.y), Math.abs(y - frame.y - frame.height));
  return Math.hypot(across, down) <= Math.min(reach, frame.width / 4, frame.height / 4);
}

/**
 * The cut as the fingers have it now: one finger moves it, or sizes it about its centre when it took
 * hold of a corner; two fingers size it by their distance and move it along.
 */
function moveCutByFingers(photo: PixelSize, start: GestureStart, now: readonly Touch[]): Crop {
  const { crop, view, touches } = start;
  const [first, second] = touches;
  const [nowFirst, nowSecond] = now;
  if (!first || !nowFirst) return crop;
  if (second && nowSecond) {
    const sized = resizedCrop(photo, crop, apart(nowFirst, nowSecond) / apart(first, second));
    const [from, to] = [middle(touches), middle(now)];
    return movedCrop(photo, sized, (to[0] - from[0]) / view.scale, (to[1] - from[1]) / view.scale);
  }
  if (holdsCorner(view, first)) {
    const { x, y, width, height } = view.frame;
    const centre: Touch = [x + width / 2, y + height / 2];
    return resizedCrop(photo, crop, apart(nowFirst, centre) / apart(first, centre));
  }
  const right = (nowFirst[0] - first[0]) / view.scale;
  return movedCrop(photo, crop, right, (nowFirst[1] - first[1]) / view.scale);
}

/** How the turned photo lies on the stage: everything in px of the screen. */
export interface CutView {
  /** Screen px per photo px. */
  readonly scale: number;
  readonly centre: readonly [x: number, y: number];
  /** The cut: its upper left corner and its sides. */
  readonly frame: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
}

/** Free space round the photo, px, so that a cut at its very edge can be seen and taken hold of. */
const margin = 14;

/** The whole turned photo, as large as the stage allows, and the cut upright over it. */
export function fitCutView(photo: PixelSize, crop: Crop, stage: PixelSize): CutView {
  const room = roomOf(photo, crop.turn);
  const scale = Math.max(
    1e-6,
    Math.min((stage.width - 2 * margin) / room.width, (stage.height - 2 * margin) / room.height),
  );
  const centre = [stage.width / 2, stage.height / 2] as const;
  const box: CropBox = boxOf(photo, crop);
  const angle = (crop.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [x, y] = [box.x - photo.width / 2, box.y - photo.height / 2];
  const [width, height] = [box.width * scale, box.height * scale];
  return {
    scale,
    centre,
    frame: {
      x: centre[0] + (cos * x - sin * y) * scale - width / 2,
      y: centre[1] + (sin * x + cos * y) * scale - height / 2,
      width,
      height,
    },
  };
}
