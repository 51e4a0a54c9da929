import { useEffect, useRef, useState } from 'preact/hooks';
import { type CameraFailure, cameraFailure } from './camera-problem.ts';
import { cameraIds, openCamera, stopStream } from './open-camera.ts';

export type CameraState =
  | { readonly kind: 'starting' }
  | { readonly kind: 'live'; readonly stream: MediaStream; readonly cameras: readonly string[] }
  | { readonly kind: 'failed'; readonly failure: CameraFailure };

export interface Camera {
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
    const at = state.cameras.indexOf(idOf(state.stream) ?? wanted.current ?? '');
    wanted.current = state.cameras[(at + 1) % state.cameras.length] ?? null;
    again();
  };
  return { state, again, switchOver };
}
