import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { cssGrey, type Point } from '../../core/colour/lab.ts';
import { valueOfLightness } from '../../core/colour/lightness.ts';
import { meanColour } from '../../core/raster/squint.ts';
import type { PictureTurn } from '../../ui/picture/picture.tsx';
import { Stage } from '../../ui/pointer/stage.tsx';
import styles from './spot-stage.module.css';
import type { Look } from './use-look.ts';
import { turnPoint, useSpotTouch } from './use-spot-touch.ts';

interface SpotStageProps {
  look: Look;
  /** What is seen through the card beside the finger. */
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
          <IsolatingCard bitmap={bitmap} spot={moving} turn={turn} />
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

/** Side of the hole in its own px, and how many px of the picture it shows. */
const sidePx = 112;
const shownPx = 36;
/** Of so many px of the picture about the spot the card tells the value (own). */
const tellingPx = 3;

interface IsolatingCardProps {
  bitmap: ImageBitmap;
  /** 0..1 of the picture. */
  spot: Point;
  turn: PictureTurn;
}

/**
 * The trade's isolating card, beside the finger and never under it: a grey card with a hole, in which the spot is seen
 * apart from what surrounds it, and the value scale along its edge; the step that matches is pushed up to the hole.
 */
function IsolatingCard({ bitmap, spot, turn }: IsolatingCardProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [step, setStep] = useState(0);
  const [x, y] = turnPoint(spot, turn);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d', { willReadFrequently: true });
    if (!context || bitmap.width === 0) return; // a bitmap already handed back is 0 wide
    const zoom = sidePx / shownPx;
    context.resetTransform();
    context.clearRect(0, 0, sidePx, sidePx);
    context.imageSmoothingEnabled = false;
    context.translate(sidePx / 2, sidePx / 2);
    context.scale(turn.mirrored !== turn.upsideDown ? -zoom : zoom, turn.upsideDown ? -zoom : zoom);
    context.translate(-spot[0] * bitmap.width, -spot[1] * bitmap.height);
    context.drawImage(bitmap, 0, 0);
    const seen = context.getImageData(0, 0, sidePx, sidePx);
    const [lightness] = meanColour(seen, sidePx / 2, sidePx / 2, (tellingPx / 2) * zoom);
    setStep(Math.min(9, Math.floor(valueOfLightness(lightness))));
  }, [bitmap, spot, turn]);
  return (
    <span
      class={styles.card}
      data-side={x > 0.5 ? 'left' : 'right'}
      data-testid="isolating-card"
      style={{ '--x': `${x * 100}%`, '--y': `${y * 100}%` }}
      aria-hidden="true"
    >
      <canvas ref={canvas} class={styles.hole} width={sidePx} height={sidePx} />
      <span class={styles.scale}>
        {steps.map((each) => (
          <span
            key={each}
            class={styles.step}
            data-current={each === step || undefined}
            style={{ background: cssGrey((each + 0.5) * 10) }}
          />
        ))}
      </span>
    </span>
  );
}

/** The ten steps of the value scale, black first; step i stands for values i..i+1. */
const steps = Array.from({ length: 10 }, (_, i) => i);
