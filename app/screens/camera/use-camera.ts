import { useEffect, useRef, useState } from 'preact/hooks';

type CameraState =
  | { readonly kind: 'starting' }
  | { readonly kind: 'live'; readonly stream: MediaStream; readonly cameras: readonly string[] }
  | { readonly kind: 'failed'; readonly failure: CameraFailure };

interface Camera {
  readonly state: CameraState;
  readonly again: () => void;
  /** The next camera of the device, where there are several. */
  readonly switchOver: () => void;
}

const idOf = (stream: MediaStream): string | undefined =>
  stream.getVideoTracks()[0]?.getSettings().deviceId;

/**
 * The live camera while the component is there and the page is seen: let go on leaving and when the
 * page is hidden (the phone needs it elsewhere), taken up again when she comes back.
 */
export function useCamera(): Camera {
  const [state, setState] = useState<CameraState>({ kind: 'starting' });
  const [attempt, setAttempt] = useState(0);
  const wanted = useRef<string | null>(null);

  useEffect(() => {
    let stream: MediaStream | null = null;
    let current: AbortController | null = null;
    const close = (): void => {
      current?.abort();
      current = null;
      stopStream(stream);
      stream = null;
    };
    const open = async (signal: AbortSignal): Promise<void> => {
      setState({ kind: 'starting' });
      try {
        const opened = await openCamera(wanted.current);
        if (signal.aborted) return stopStream(opened); // she left while the browser was asking
        stream = opened;
        const cameras = await cameraIds();
        if (signal.aborted) return;
        opened.getVideoTracks()[0]?.addEventListener('ended', () => {
          if (!signal.aborted) setState({ kind: 'failed', failure: 'stopped' });
        });
        setState({ kind: 'live', stream: opened, cameras });
      } catch (thrown) {
        if (signal.aborted) return;
        close();
        setState({ kind: 'failed', failure: cameraFailure(thrown) });
      }
    };
    const start = (): void => {
      close();
      if (!navigator.mediaDevices?.getUserMedia) {
        setState({ kind: 'failed', failure: window.isSecureContext ? 'absent' : 'unsafe-page' });
        return;
      }
      current = new AbortController();
      void open(current.signal);
    };
    const seenOrHidden = (): void => {
      if (document.visibilityState === 'visible') {
        start();
        return;
      }
      close();
      setState({ kind: 'starting' });
    };
    if (document.visibilityState === 'visible') start();
    document.addEventListener('visibilitychange', seenOrHidden);
    window.addEventListener('pagehide', close);
    return () => {
      document.removeEventListener('visibilitychange', seenOrHidden);
      window.removeEventListener('pagehide', close);
      close();
    };
  }, [attempt]);

  const again = (): void => setAttempt((count) => count + 1);
  const switchOver = (): void => {
    if (state.kind !== 'live') return;
    const cameraIndex = state.cameras.indexOf(idOf(state.stream) ?? wanted.current ?? '');
    wanted.current = state.cameras[(cameraIndex + 1) % state.cameras.length] ?? null;
    again();
  };
  return { state, again, switchOver };
}

/** The largest picture the camera gives; it hands out less where it must. */
const large = { width: { ideal: 4096 }, height: { ideal: 4096 } };

const videoOf = (deviceId: string | null): MediaTrackConstraints =>
  deviceId
    ? { ...large, deviceId: { exact: deviceId } }
    : { ...large, facingMode: { ideal: 'environment' } };

/**
 * A stream of the camera asked for, else of the one that looks away from her. Throws what
 * getUserMedia throws; a camera that has gone since it was listed is replaced by any other.
 */
async function openCamera(deviceId: string | null): Promise<MediaStream> {
  try {
    return await navigator.mediaDevices.getUserMedia({ audio: false, video: videoOf(deviceId) });
  } catch (thrown) {
    const gone = thrown instanceof Error && thrown.name === 'OverconstrainedError';
    if (!gone || !deviceId) throw thrown;
    return navigator.mediaDevices.getUserMedia({ audio: false, video: videoOf(null) });
  }
}

function stopStream(stream: MediaStream | null): void {
  for (const track of stream?.getTracks() ?? []) track.stop();
}

/** Ids of all cameras, in the device's order; known only once one has been allowed. */
async function cameraIds(): Promise<string[]> {
  const devices = await navigator.mediaDevices.enumerateDevices();
  return devices
    .filter(({ kind, deviceId }) => kind === 'videoinput' && deviceId)
    .map(({ deviceId }) => deviceId);
}

/** A camera that has not answered by then gets its video frame taken instead, ms. */
const patienceMs = 5000;

/** Image Capture is not in every browser (W3C MediaStream Image Capture). */
const captureOf = (track: MediaStreamTrack): ImageCapture | null =>
  typeof globalThis.ImageCapture === 'function' ? new ImageCapture(track) : null;

async function sensorPhoto(capture: ImageCapture): Promise<Blob> {
  try {
    const { imageWidth, imageHeight } = await capture.getPhotoCapabilities();
    if (imageWidth?.max && imageHeight?.max)
      return await capture.takePhoto({ imageWidth: imageWidth.max, imageHeight: imageHeight.max });
  } catch {
    // Some cameras can't say their sizes, or refuse the largest pair: take what they give unasked.
  }
  return capture.takePhoto();
}

const late = (): Promise<null> => new Promise((settle) => setTimeout(settle, patienceMs, null));

/** The picture the video shows now, at the video's own size, JPEG. */
async function videoFrame(video: HTMLVideoElement): Promise<Blob> {
  const { videoWidth: width, videoHeight: height } = video;
  if (!width || !height) throw new RangeError('The camera shows no picture yet.');
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  canvas.getContext('2d')?.drawImage(video, 0, 0);
  const blob = await new Promise<Blob | null>((settle) =>
    canvas.toBlob(settle, 'image/jpeg', 0.95),
  );
  if (!blob) throw new RangeError('The frame could not be kept as JPEG.');
  return blob;
}

/**
 * The largest still to be had: the sensor's own photo where the browser can ask for it, else the
 * frame on screen. Throws only where the video has no picture either.
 */
export async function takeStill(stream: MediaStream, video: HTMLVideoElement): Promise<Blob> {
  const track = stream.getVideoTracks()[0];
  const capture = track && captureOf(track);
  if (capture) {
    // Asked for once more than waited for: a late answer or refusal is of no use then.
    const asked = sensorPhoto(capture).catch(() => null);
    const photo = await Promise.race([asked, late()]);
    if (photo?.size) return photo;
  }
  return videoFrame(video);
}

/** Why there is no live view; 'stopped' is a camera that was taken away while it ran. */
type CameraFailure = 'unsafe-page' | 'stopped' | 'other' | 'refused' | 'absent' | 'busy';

const failureOf: Record<string, CameraFailure> = {
  NotAllowedError: 'refused',
  SecurityError: 'refused',
  NotFoundError: 'absent',
  OverconstrainedError: 'absent',
  NotReadableError: 'busy',
  AbortError: 'busy',
};

/** The failure behind what getUserMedia threw (names: W3C Media Capture and Streams, 10.3). */
const cameraFailure = (thrown: unknown): CameraFailure =>
  (thrown instanceof Error || thrown instanceof DOMException) && failureOf[thrown.name]
    ? (failureOf[thrown.name] as CameraFailure)
    : 'other';

/** What happened and what to do, in a painter's words. The two other ways stand below it. */
export const cameraProblem: Record<CameraFailure, string> = {
  refused:
    'This page may not use the camera. Allow it in the browser’s settings for this page, then try again.',
  absent: 'No camera was found on this device. Plug one in and try again, or bring a photo.',
  busy: 'The camera is busy: another app or another page is using it. Close that one, then try again.',
  'unsafe-page':
    'The live view works only where the address of this page begins with https. Photos can be brought in all the same.',
  stopped: 'The camera has stopped. Try again; if it was unplugged, plug it in first.',
  other: 'The camera did not start. Try again, or bring a photo in another way.',
};
