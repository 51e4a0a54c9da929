import type { Point } from '../../core/colour/lab.ts';
import type { PictureTurn } from '../../ui/picture/picture.tsx';
import { arrowDirections, isShortcut, movePlace } from '../../ui/pointer/stage-keys.ts';
import {
  type Pointers,
  placeInShares,
  type StageEvent,
  usePointers,
} from '../../ui/pointer/use-pointers.ts';
import type { Look } from './use-look.ts';

/**
 * Finger, mouse and keys on the picture while she touches for value: where the finger is is shown at
 * once, where it is lifted stays marked; a second spot is compared with the first, a third starts anew.
 */
export function useSpotTouch({ marks, moving, turn }: Look) {
  const beginIfFull = (): void => {
    if (marks.value.length >= 2) marks.value = [];
  };
  const mark = (spot: Point): void => {
    beginIfFull();
    marks.value = [...marks.value, spot];
    moving.value = null;
  };
  const locateSpot = (event: StageEvent): Point => turnPoint(placeInShares(event), turn.value);

  const pointers: Pointers = usePointers({
    most: 1,
    captures: true,
    placeOf: locateSpot,
    onDown(_event, spot) {
      beginIfFull();
      moving.value = spot;
      return true;
    },
    onMove(_event, spot) {
      moving.value = spot;
    },
    onHover(event) {
      if (pointers.places.size > 0 || event.pointerType !== 'mouse') return;
      if (marks.value.length < 2) moving.value = locateSpot(event);
    },
    onUp: (_event, spot) => mark(spot),
    onCancel() {
      moving.value = null;
    },
  });
  const leave = (): void => {
    if (pointers.places.size === 0) moving.value = null;
  };
  const keyDown = (event: KeyboardEvent): void => {
    if (isShortcut(event)) return;
    const from = moving.value ?? marks.value.at(-1) ?? [0.5, 0.5];
    const next = moveSpotByKey(from, turn.value, event.key, event.shiftKey);
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

  return { ...pointers.handlers, onPointerLeave: leave, onKeyDown: keyDown };
}

/** A place on screen and the same place of the picture, 0..1 each: its own way back. */
export const turnPoint = ([x, y]: Point, { upsideDown, mirrored }: PictureTurn): Point => [
  mirrored !== upsideDown ? 1 - x : x,
  upsideDown ? 1 - y : y,
];

/** The spot after an arrow key, by a hundredth of the picture, with Shift a twentieth; as seen on screen. */
function moveSpotByKey(spot: Point, turn: PictureTurn, key: string, shift: boolean): Point | null {
  const direction = arrowDirections[key];
  if (!direction) return null;
  return turnPoint(movePlace(turnPoint(spot, turn), direction, shift ? 0.05 : 0.01), turn);
}
