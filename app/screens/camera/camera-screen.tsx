import { useEffect, useRef, useState } from 'preact/hooks';
import { Button } from '../common/button.tsx';
import { Workplace } from '../common/workplace.tsx';
import { cameraProblem } from './camera-problem.ts';
import styles from './camera-screen.module.css';
import { LiveView } from './live-view.tsx';
import { PhotoInput } from './photo-input.tsx';
import { takeStill } from './take-still.ts';
import { useCamera } from './use-camera.ts';

interface CameraScreenProps {
  /** A photo taken in the live view; called once for a press. */
  onPhoto: (photo: Blob) => void;
  onCancel: () => void;
  /** A photo chosen, or taken with the device's own camera app. */
  onChooseFile: (file: File) => void;
}

const notTaken = 'The photo was not taken: the camera gave no picture. Press again.';

/** Live view of the camera with a shutter, and the two other ways to bring in a photo. */
export function CameraScreen({ onPhoto, onCancel, onChooseFile }: CameraScreenProps) {
  const { state, again, switchOver } = useCamera();
  const video = useRef<HTMLVideoElement>(null);
  const here = useRef(true);
  const taking = useRef(false);
  const [ready, setReady] = useState<MediaStream | null>(null);
  const [word, setWord] = useState('');
  useEffect(() => {
    here.current = true;
    return () => {
      here.current = false;
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
      if (here.current) onPhoto(photo);
      if (here.current) setWord('');
    } catch {
      if (here.current) setWord(notTaken);
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
    <Workplace
      name="camera"
      top={
        <>
          <Button look="quiet" onClick={onCancel}>
            Cancel
          </Button>
          <h1 class={styles.title}>Take a photo</h1>
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
                ? 'Fill the view with what you want to paint and hold it level.'
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
