import type { Ref } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { App } from '../../state/create-app.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PhotoInput } from '../../ui/controls/photo-input.tsx';
import layout from '../../ui/layout/screen-layout.module.css';
import { ScreenLayout } from '../../ui/layout/screen-layout.tsx';
import styles from './camera-screen.module.css';
import { cameraProblem, takeStill, useCamera } from './use-camera.ts';

interface CameraScreenProps {
  /** A photo taken in the live view; called once for a press. */
  onPhoto: (photo: Blob) => void;
  onCancel: () => void;
  /** A photo chosen, or taken with the device's own camera app. */
  onChooseFile: (file: File) => void;
  /** What is photographed: a frame of that shape, width over height, to fill with it, and how to hold the camera. */
  guide?: { readonly ratio: number; readonly words: string };
}

const notTaken = 'The photo was not taken: the camera gave no picture. Press again.';

/** Live view of the camera with a shutter, and the two other ways to bring in a photo. */
export function CameraScreen({ onPhoto, onCancel, onChooseFile, guide }: CameraScreenProps) {
  const { state, again, switchOver } = useCamera();
  const video = useRef<HTMLVideoElement>(null);
  const isMounted = useRef(true);
  const taking = useRef(false);
  const [ready, setReady] = useState<MediaStream | null>(null);
  const [word, setWord] = useState('');
  useEffect(() => {
    isMounted.current = true;
    return () => {
      isMounted.current = false;
    };
  }, []);

  const stream = state.kind === 'live' ? state.stream : null;
  const canTake = stream !== null && ready === stream;

  const take = async (): Promise<void> => {
    if (!stream || !canTake || !video.current || taking.current) return; // a second press at once
    taking.current = true;
    setWord('Taking the photo …');
    try {
      const photo = await takeStill(stream, video.current);
      if (isMounted.current) onPhoto(photo);
      if (isMounted.current) setWord('');
    } catch {
      if (isMounted.current) setWord(notTaken);
    } finally {
      taking.current = false;
    }
  };
  const latestTake = useRef(take);
  latestTake.current = take;
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      const onControl = event.target instanceof Element && event.target.closest('button, input, a');
      if (onControl || event.repeat || (event.key !== ' ' && event.key !== 'Enter')) return;
      event.preventDefault();
      void latestTake.current();
    };
    document.addEventListener('keydown', pressed);
    return () => document.removeEventListener('keydown', pressed);
  }, []);

  return (
    <ScreenLayout
      name="camera"
      top={
        <>
          <Button look="quiet" onClick={onCancel}>
            Cancel
          </Button>
          <h1 class={layout.title}>Take a photo</h1>
        </>
      }
      picture={
        <div class={styles.view}>
          {state.kind === 'failed' ? (
            <div class={styles.instead} role="alert">
              <p class={styles.sentence}>{cameraProblem[state.failure]}</p>
            </div>
          ) : (
            <>
              <LiveView stream={stream} video={video} onReady={() => setReady(stream)} />
              {guide && (
                <div class={styles.guide} style={{ '--ratio': guide.ratio }} aria-hidden="true">
                  <span />
                </div>
              )}
              {!canTake && (
                <p class={styles.waiting} role="status">
                  Starting the camera … Allow it if the browser asks.
                </p>
              )}
            </>
          )}
        </div>
      }
      panel={
        <div class={styles.ways}>
          <p class={styles.word} role="status">
            {word ||
              (canTake
                ? (guide?.words ?? 'Fill the view with what you want to paint and hold it level.')
                : 'A photo can also come in one of these ways:')}
          </p>
          <PhotoInput ownCamera onFile={onChooseFile}>
            Camera app
          </PhotoInput>
          <PhotoInput onFile={onChooseFile}>Choose a photo</PhotoInput>
        </div>
      }
      actions={
        state.kind === 'failed' ? (
          <Button look="main" large onClick={again}>
            Try again
          </Button>
        ) : (
          <>
            {state.kind === 'live' && state.cameras.length > 1 && (
              <Button onClick={switchOver}>Other camera</Button>
            )}
            <Button look="main" large disabled={!canTake} onClick={() => void take()}>
              Take the photo
            </Button>
          </>
        )
      }
    />
  );
}

/** The live camera; what it takes goes the same way in as a chosen photo. */
export function CameraPlace({ app }: { app: App }) {
  return (
    <CameraScreen
      onPhoto={(photo) => void app.intake.take(photo)}
      onChooseFile={(file) => void app.intake.take(file)}
      onCancel={() => app.router.go({ screen: 'start' })}
    />
  );
}

interface LiveViewProps {
  stream: MediaStream | null;
  video: Ref<HTMLVideoElement> & { current: HTMLVideoElement | null };
  /** There is a picture to take. */
  onReady: () => void;
}

/** What the camera sees, whole and never mirrored: the photo is to look like this. */
function LiveView({ stream, video, onReady }: LiveViewProps) {
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
