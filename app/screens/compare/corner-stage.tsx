import { useSignal } from '@preact/signals';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import type { Corners } from '../../core/compare/homography.ts';
import { bitmapLayer } from '../../drawing/layers.ts';
import { Picture } from '../../ui/picture/picture.tsx';
import { PlaceStage } from '../../ui/pointer/place-stage.tsx';
import { arrowDirections, isShortcut, movePlace } from '../../ui/pointer/stage-keys.ts';
import { placeInShares, type StageEvent, usePointers } from '../../ui/pointer/use-pointers.ts';
import styles from './corner-stage.module.css';

export const cornerNames = ['upper left', 'upper right', 'lower right', 'lower left'] as const;

/** One step of an arrow, as a share of the photo's sides; with Shift a long one. */
export const cornerStep = 0.001;
export const longCornerStep = 0.01;

export const withCorner = (corners: Corners, n: number, place: Point): Corners => {
  const [a, b, c, d] = corners.map((corner, i) => (i === n ? place : corner));
  return [a ?? place, b ?? place, c ?? place, d ?? place];
};

interface CornerStageProps {
  photo: ImageBitmap;
  corners: Corners;
  bare: readonly Point[];
  /** What a touch sets: a corner is drawn, or bare paper is shown. */
  sets: 'corners' | 'bare';
  /** The corner that the buttons move. */
  chosen: number;
  onChoose: (corner: number) => void;
  onCorners: (corners: Corners) => void;
  onBare: (place: Point) => void;
}

/** The photo with the four corners of the painting on it, each to be drawn under a magnifier. */
export function CornerStage(props: CornerStageProps) {
  const { photo, corners, bare, sets, chosen, onChoose, onCorners, onBare } = props;
  const layers = useMemo(() => ({ photo: bitmapLayer(photo) }), [photo]);
  const held = useSignal<number | null>(null);
  const outline = corners.map(([x, y]) => `${100 * x},${100 * y}`).join(' ');
  const shownCorner = held.value === null ? null : corners[held.value];
  return (
    <div class={styles.room}>
      <Picture
        label="Your photo of the sheet"
        size={photo}
        layers={layers}
        show="photo"
        over={
          <div class={styles.over} data-testid="corner-stage">
            <svg
              class={styles.lines}
              viewBox="0 0 100 100"
              preserveAspectRatio="none"
              aria-hidden="true"
            >
              <polygon class={styles.casing} points={outline} />
              <polygon class={styles.line} points={outline} />
            </svg>
            {bare.map(([x, y]) => (
              <span
                key={`${x} ${y}`}
                class={styles.bare}
                style={{ left: `${100 * x}%`, top: `${100 * y}%` }}
                data-testid="bare-spot"
              />
            ))}
            {sets === 'bare' ? (
              <PlaceStage label="Touch bare paper." onPlace={onBare} />
            ) : (
              corners.map((corner, n) => (
                <CornerHandle
                  key={cornerNames[n]}
                  n={n}
                  place={corner}
                  chosen={n === chosen}
                  onHold={(isHeld) => {
                    held.value = isHeld ? n : null;
                    if (isHeld) onChoose(n);
                  }}
                  onMove={(place) => onCorners(withCorner(corners, n, place))}
                />
              ))
            )}
            {shownCorner && <Magnifier photo={photo} place={shownCorner} />}
          </div>
        }
      />
    </div>
  );
}

interface CornerHandleProps {
  n: number;
  place: Point;
  chosen: boolean;
  onHold: (isHeld: boolean) => void;
  onMove: (place: Point) => void;
}

/** Where a pointer at a corner is, 0..1 of the photo. */
const placeOnPhoto = (event: StageEvent): Point =>
  placeInShares(event, 0, event.currentTarget.parentElement ?? undefined);

/** A corner: drawn by a finger, or moved by keys. What is taken hold of stays under the finger. */
function CornerHandle({ n, place, chosen, onHold, onMove }: CornerHandleProps) {
  const away = useRef<Point>([0, 0]);
  const { handlers } = usePointers({
    most: 1,
    captures: true,
    placeOf: placeOnPhoto,
    onDown(_event, [x, y]) {
      away.current = [place[0] - x, place[1] - y];
      onHold(true);
      return true;
    },
    onMove: (_event, [x, y]) => onMove(movePlace([x, y], away.current, 1)),
    onUp: () => onHold(false),
    onCancel: () => onHold(false),
  });
  return (
    <button
      type="button"
      class={styles.corner}
      data-chosen={chosen || undefined}
      style={{ left: `${100 * place[0]}%`, top: `${100 * place[1]}%` }}
      aria-label={`Corner ${n + 1}, ${cornerNames[n]} of the painting. Arrow keys move it, with Shift farther.`}
      {...handlers}
      onFocus={() => onHold(true)}
      onBlur={() => onHold(false)}
      onKeyDown={(event) => {
        const direction = arrowDirections[event.key];
        if (isShortcut(event) || !direction) return;
        event.preventDefault();
        onHold(true);
        onMove(movePlace(place, direction, event.shiftKey ? longCornerStep : cornerStep));
      }}
    >
      <span aria-hidden="true">{n + 1}</span>
    </button>
  );
}

/** So many px of the photo are seen across, on so many of the glass. */
const seenPx = 60;
const glassPx = 132;

/** The photo round a place, large, in the far upper corner, so that no finger covers it. */
function Magnifier({ photo, place: [x, y] }: { photo: ImageBitmap; place: Point }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context || photo.width === 0) return; // a bitmap that was let go has no size
    const scale = glassPx / seenPx;
    context.fillStyle = '#777';
    context.fillRect(0, 0, glassPx, glassPx);
    context.setTransform(
      scale,
      0,
      0,
      scale,
      glassPx / 2 - x * photo.width * scale,
      glassPx / 2 - y * photo.height * scale,
    );
    context.drawImage(photo, 0, 0);
    context.setTransform(1, 0, 0, 1, 0, 0);
  }, [photo, x, y]);
  const isLeft = x > 0.5;
  return (
    <div
      class={styles.magnifier}
      data-left={isLeft || undefined}
      data-low={y < 0.35 || undefined}
      aria-hidden="true"
      data-testid="magnifier"
    >
      <canvas ref={canvas} width={glassPx} height={glassPx} />
    </div>
  );
}
