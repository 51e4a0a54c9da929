import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import type { PictureTurn } from '../../ui/picture/picture.tsx';
import { Stage } from '../../ui/pointer/stage.tsx';
import styles from './spot-stage.module.css';
import type { Look } from './use-look.ts';
import { turnPoint, useSpotTouch } from './use-spot-touch.ts';

interface SpotStageProps {
  look: Look;
  /** What is enlarged beside the finger. */
  bitmap: ImageBitmap;
}

/** Lies over the picture: a finger, the mouse or the arrow keys point at a spot. */
export function SpotStage({ look, bitmap }: SpotStageProps) {
  const stage = useRef<HTMLDivElement>(null);
  const handlers = useSpotTouch(look);
  const turn = look.turn.value;
  const moving = look.moving.value;
  useEffect(() => stage.current?.focus({ preventScroll: true }), []);
  return (
    <Stage
      stageRef={stage}
      class={styles.stage}
      label="Touch a spot of the picture. Arrow keys move the cross, Enter marks the spot."
      name="spot-stage"
      {...handlers}
    >
      {look.marks.value.map((spot, i) => (
        <Mark key={`${i} ${spot.join(' ')}`} place={turnPoint(spot, turn)} name={String(i + 1)} />
      ))}
      {moving && (
        <>
          <Mark place={turnPoint(moving, turn)} name="" />
          <Loupe bitmap={bitmap} spot={moving} turn={turn} />
        </>
      )}
    </Stage>
  );
}

const placeStyle = ([x, y]: Point) => ({ left: `${x * 100}%`, top: `${y * 100}%` });

function Mark({ place, name }: { place: Point; name: string }) {
  return (
    <span class={styles.mark} style={placeStyle(place)} aria-hidden="true">
      {name}
    </span>
  );
}

/** Side of the glass in its own px, and how many px of the picture it shows. */
const sidePx = 224;
const shownPx = 72;

interface LoupeProps {
  bitmap: ImageBitmap;
  /** 0..1 of the picture. */
  spot: Point;
  turn: PictureTurn;
}

/** The spot enlarged, beside the finger and never under it. */
function Loupe({ bitmap, spot, turn }: LoupeProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [x, y] = turnPoint(spot, turn);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context || bitmap.width === 0) return; // a bitmap already handed back is 0 wide
    const zoom = sidePx / shownPx;
    context.resetTransform();
    context.clearRect(0, 0, sidePx, sidePx);
    context.imageSmoothingEnabled = false;
    context.translate(sidePx / 2, sidePx / 2);
    context.scale(turn.mirrored !== turn.upsideDown ? -zoom : zoom, turn.upsideDown ? -zoom : zoom);
    context.translate(-spot[0] * bitmap.width, -spot[1] * bitmap.height);
    context.drawImage(bitmap, 0, 0);
  }, [bitmap, spot, turn]);
  return (
    <span
      class={styles.loupe}
      data-side={x > 0.5 ? 'left' : 'right'}
      style={{ '--x': `${x * 100}%`, '--y': `${y * 100}%` }}
      aria-hidden="true"
    >
      <canvas ref={canvas} class={styles.glass} width={sidePx} height={sidePx} />
    </span>
  );
}
