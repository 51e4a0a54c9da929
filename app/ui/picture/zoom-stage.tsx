import { type Signal, useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Button, buttonClass } from '../controls/button.tsx';
import { measureStage, useZoomGesture, useZoomKeys } from '../pointer/use-zoom-gesture.ts';
import { boundZoom, wholePicture, type Zoom } from './picture-zoom.ts';
import styles from './zoom-stage.module.css';

interface ZoomStageProps {
  zoom: Signal<Zoom>;
  /** Width / height of the picture, which lies whole in the middle of the stage. */
  ratio: number;
  children: ComponentChildren;
}

/** Round a picture: nearer and farther by pinch, double tap, wheel and keys, and back to the whole. */
export function ZoomStage({ zoom, ratio, children }: ZoomStageProps) {
  const frame = useRef<HTMLDivElement>(null);
  const held = useSignal(false);
  const gesture = useZoomGesture({ zoom, ratio, held });
  const keys = useZoomKeys(zoom, ratio);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const watch = new ResizeObserver(() => {
      zoom.value = boundZoom(measureStage(element, ratio), zoom.peek()); // the device was turned
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, [zoom, ratio]);
  const { scale, centre } = zoom.value;
  const isZoomed = scale > 1;
  return (
    <div class={styles.place} data-zoomed={isZoomed || undefined} data-testid="zoom-stage">
      <div
        ref={frame}
        class={styles.frame}
        data-held={held.value || undefined}
        {...gesture}
        {...keys}
      >
        <div
          class={styles.moved}
          style={{
            '--ratio': ratio,
            '--scale': scale,
            '--right': (0.5 - centre[0]) * scale,
            '--down': (0.5 - centre[1]) * scale,
          }}
        >
          {children}
        </div>
      </div>
      {isZoomed && (
        <Button
          class={`${buttonClass()} ${styles.whole}`}
          onClick={() => {
            zoom.value = wholePicture;
          }}
        >
          Whole picture
        </Button>
      )}
    </div>
  );
}
