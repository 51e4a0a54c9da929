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
