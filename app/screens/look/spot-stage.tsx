import { useEffect, useRef } from 'preact/hooks';
import type { Point } from '../../model/lab.ts';
import { Loupe } from './loupe.tsx';
import { turnedPoint } from './spot-of-event.ts';
import styles from './spot-stage.module.css';
import type { Look } from './use-look.ts';
import { useSpotTouch } from './use-spot-touch.ts';

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
    <div
      ref={stage}
      class={styles.stage}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the cross is moved by keys from here
      tabIndex={0}
      aria-label="Touch a spot of the picture. Arrow keys move the cross, Enter marks the spot."
      data-testid="spot-stage"
      {...handlers}
    >
      {look.marks.value.map((spot, i) => (
        <Mark key={`${i} ${spot.join(' ')}`} at={turnedPoint(spot, turn)} name={String(i + 1)} />
      ))}
      {moving && (
        <>
          <Mark at={turnedPoint(moving, turn)} name="" />
          <Loupe bitmap={bitmap} spot={moving} turn={turn} />
        </>
      )}
    </div>
  );
}

const placed = ([x, y]: Point) => ({ left: `${x * 100}%`, top: `${y * 100}%` });

function Mark({ at, name }: { at: Point; name: string }) {
  return (
    <span class={styles.mark} style={placed(at)} aria-hidden="true">
      {name}
    </span>
  );
}
