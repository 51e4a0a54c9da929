import type { Ref } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import styles from './live-view.module.css';

interface LiveViewProps {
  stream: MediaStream | null;
  video: Ref<HTMLVideoElement> & { current: HTMLVideoElement | null };
  /** There is a picture to take. */
  onReady: () => void;
}

/** What the camera sees, whole and never mirrored: the photo is to look like this. */
export function LiveView({ stream, video, onReady }: LiveViewProps) {
  const ready = useRef(onReady);
  ready.current = onReady;
  useLayoutEffect(() => {
    const element = video.current;
    if (!element) return;
    element.srcObject = stream;
    // Refused only where the stream has just been stopped: a new one is on its way then.
    if (stream) element.play().catch(() => undefined);
    return () => {
      element.srcObject = null;
    };
  }, [stream, video]);
  return (
    <video
      ref={video}
      class={styles.video}
      muted
      playsInline
      autoPlay
      aria-label="What the camera sees"
      onLoadedData={() => ready.current()}
    />
  );
}
