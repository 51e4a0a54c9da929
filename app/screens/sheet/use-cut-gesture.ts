import { useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import { boxOf, type CropBox, movedCrop, resizedCrop } from '../../core/reference/move-crop.ts';
import { type Crop, roomOf } from '../../core/reference/reference.ts';
import { type Pointers, placeInPx, usePointers } from '../../ui/pointer/use-pointers.ts';

interface CutGesture {
  photo: PixelSize;
  crop: Crop;
  view: CutView;
  /** While the fingers move. */
  onMove: (crop: Crop) => void;
  /** When the last finger has left. */
  onSettle: (crop: Crop) => void;
}

/** Pointer handlers for the stage. A gesture the browser takes away leaves the cut as it was before. */
export function useCutGesture({ photo, crop, view, onMove, onSettle }: CutGesture) {
  const start = useRef<GestureStart | null>(null);
  const before = useRef<Crop>(crop);
  const reached = useRef<Crop>(crop);

  /** Fingers came or went: what follows is counted from here. */
  const beginAgain = (): void => {
    const touches = [...pointers.places.values()];
    start.current = touches.length ? { crop: reached.current, view, touches } : null;
  };

  const pointers: Pointers = usePointers({
    most: 2,
    captures: true,
    placeOf: placeInPx,
    onDown(event) {
      event.currentTarget.focus({ preventScroll: true });
      event.preventDefault();
      if (pointers.places.size === 1) {
        before.current = crop;
        reached.current = crop;
      }
      beginAgain();
      return true;
    },
    onMove() {
      if (!start.current) return;
      reached.current = moveCutByFingers(photo, start.current, [...pointers.places.values()]);
      onMove(reached.current);
    },
    onUp() {
      beginAgain();
      if (pointers.places.size === 0 && reached.current !== before.current)
        onSettle(reached.current);
    },
    onCancel() {
      pointers.places.clear();
      start.current = null;
      onMove(before.current);
    },
  });
  return pointers.handlers;
}

/** Where a gesture began: the cut, how it lay on the stage, and the one or two fingers. */
interface GestureStart {
  readonly crop: Crop;
  readonly view: CutView;
  readonly touches: readonly Point[];
}

const middle = (touches: readonly Point[]): Point => [
  touches.reduce((sum, touch) => sum + touch[0], 0) / touches.length,
  touches.reduce((sum, touch) => sum + touch[1], 0) / touches.length,
];

const apart = (a: Point, b: Point): number => Math.max(1, Math.hypot(a[0] - b[0], a[1] - b[1]));

/** How near to a corner of the frame a finger takes hold of it, px. */
const reach = 28;

function holdsCorner({ frame }: CutView, [x, y]: Point): boolean {
  const across = Math.min(Math.abs(x - frame.x), Math.abs(x - frame.x - frame.width));
  const down = Math.min(Math.abs(y - frame.y), Math.abs(y - frame.y - frame.height));
  return Math.hypot(across, down) <= Math.min(reach, frame.width / 4, frame.height / 4);
}

/**
 * The cut as the fingers have it now: one finger moves it, or sizes it about its centre when it took
 * hold of a corner; two fingers size it by their distance and move it along.
 */
function moveCutByFingers(photo: PixelSize, start: GestureStart, moved: readonly Point[]): Crop {
  const { crop, view, touches } = start;
  const [first, second] = touches;
  const [movedFirst, movedSecond] = moved;
  if (!first || !movedFirst) return crop;
  if (second && movedSecond) {
    const sized = resizedCrop(photo, crop, apart(movedFirst, movedSecond) / apart(first, second));
    const [from, to] = [middle(touches), middle(moved)];
    return movedCrop(photo, sized, (to[0] - from[0]) / view.scale, (to[1] - from[1]) / view.scale);
  }
  if (holdsCorner(view, first)) {
    const { x, y, width, height } = view.frame;
    const centre: Point = [x + width / 2, y + height / 2];
    return resizedCrop(photo, crop, apart(movedFirst, centre) / apart(first, centre));
  }
  const right = (movedFirst[0] - first[0]) / view.scale;
  return movedCrop(photo, crop, right, (movedFirst[1] - first[1]) / view.scale);
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
const margin = 22;

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
