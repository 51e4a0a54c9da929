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
export async function openCamera(deviceId: string | null): Promise<MediaStream> {
  try {
    return await navigator.mediaDevices.getUserMedia({ audio: false, video: videoOf(deviceId) });
  } catch (thrown) {
    const gone = thrown instanceof Error && thrown.name === 'OverconstrainedError';
    if (!gone || !deviceId) throw thrown;
    return navigator.mediaDevices.getUserMedia({ audio: false, video: videoOf(null) });
  }
}

export function stopStream(stream: MediaStream | null): void {
  for (const track of stream?.getTracks() ?? []) track.stop();
}

/** Ids of all cameras, in the device's order; known only once one has been allowed. */
export async function cameraIds(): Promise<string[]> {
  const devices = await navigator.mediaDevices.enumerateDevices();
  return devices
    .filter(({ kind, deviceId }) => kind === 'videoinput' && deviceId)
    .map(({ deviceId }) => deviceId);
}
