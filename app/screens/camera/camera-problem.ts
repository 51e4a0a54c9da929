/** Why there is no live view; 'stopped' is a camera that was taken away while it ran. */
export type CameraFailure = 'unsafe-page' | 'stopped' | 'other' | 'refused' | 'absent' | 'busy';

const failureOf: Record<string, CameraFailure> = {
  NotAllowedError: 'refused',
  SecurityError: 'refused',
  NotFoundError: 'absent',
  OverconstrainedError: 'absent',
  NotReadableError: 'busy',
  AbortError: 'busy',
};

/** The failure behind what getUserMedia threw (names: W3C Media Capture and Streams, 10.3). */
export const cameraFailure = (thrown: unknown): CameraFailure =>
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
