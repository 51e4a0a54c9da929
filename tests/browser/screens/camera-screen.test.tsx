import { afterEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { CameraScreen } from '../../../app/screens/camera/camera-screen.tsx';
import { type Shown, shown } from './shown.ts';

const onPhoto = vi.fn<(photo: Blob) => void>();
const onChooseFile = vi.fn<(file: File) => void>();
const opened: MediaStream[] = [];
let screen: Shown | null = null;

/** A moving picture of 640 x 480 in the camera's place. */
function canvasStream(): MediaStream {
  const canvas = document.createElement('canvas');
  canvas.width = 640;
  canvas.height = 480;
  const context = canvas.getContext('2d');
  const draw = (): void => {
    if (!context) return;
    context.fillStyle = 'rgb(119 119 119)';
    context.fillRect(0, 0, 640, 480);
  };
  draw();
  const timer = setInterval(draw, 40);
  const stream = canvas.captureStream(25);
  const [track] = stream.getTracks();
  const stop = track?.stop.bind(track);
  if (track && stop)
    track.stop = () => {
      clearInterval(timer);
      stop();
    };
  opened.push(stream);
  return stream;
}

const stopped = (stream: MediaStream | undefined): boolean =>
  stream?.getTracks().every((track) => track.readyState === 'ended') ?? false;

const input = (kind: string, deviceId: string): MediaDeviceInfo => ({
  kind: kind as MediaDeviceKind,
  deviceId,
  groupId: '',
  label: '',
  toJSON: () => ({}),
});

type Asked = (wanted?: MediaStreamConstraints) => Promise<MediaStream>;

function stub(getUserMedia: Asked, cameras = 1) {
  const asked = vi.spyOn(navigator.mediaDevices, 'getUserMedia').mockImplementation(getUserMedia);
  vi.spyOn(navigator.mediaDevices, 'enumerateDevices').mockResolvedValue([
    input('audioinput', 'a'),
    ...Array.from({ length: cameras }, (_, n) => input('videoinput', `camera-${n}`)),
  ]);
  return asked;
}

function open(): void {
  screen = shown(
    <CameraScreen onPhoto={onPhoto} onCancel={() => undefined} onChooseFile={onChooseFile} />,
  );
}

const shutter = page.getByRole('button', { name: 'Take the photo' });

afterEach(() => {
  screen?.leave();
  screen = null;
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  onPhoto.mockReset();
  onChooseFile.mockReset();
  opened.length = 0;
});

test.each([
  ['NotAllowedError', /may not use the camera.*Allow it/],
  ['NotFoundError', /No camera was found/],
  ['NotReadableError', /camera is busy/],
  ['SomethingElse', /did not start/],
])('%s: a sentence, two other ways, and trying again', async (name, sentence) => {
  const asked = stub(() => Promise.reject(new DOMException('', name)));
  open();
  await expect.element(page.getByRole('alert')).toHaveTextContent(sentence);
  await expect.element(page.getByText('Choose a photo')).toBeVisible();
  await expect.element(page.getByText('Camera app')).toBeVisible();
  asked.mockImplementation(async () => canvasStream());
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect.element(shutter).toBeEnabled();
});

test('a page without a safe address says so', async () => {
  vi.spyOn(navigator, 'mediaDevices', 'get').mockReturnValue(undefined as never);
  vi.spyOn(window, 'isSecureContext', 'get').mockReturnValue(false);
  open();
  await expect.element(page.getByRole('alert')).toHaveTextContent(/begins with https/);
});

test('takes the sensor’s photo at its largest where that can be asked for', async () => {
  const asked = stub(async () => canvasStream());
  const sensor = new Blob(['a large photo'], { type: 'image/jpeg' });
  const takePhoto = vi.fn(async () => sensor);
  vi.stubGlobal(
    'ImageCapture',
    class {
      getPhotoCapabilities = async () => ({
        imageWidth: { max: 4000 },
        imageHeight: { max: 3000 },
      });
      takePhoto = takePhoto;
    },
  );
  open();
  await shutter.click();
  await expect.poll(() => onPhoto).toHaveBeenCalledExactlyOnceWith(sensor);
  expect(takePhoto).toHaveBeenCalledExactlyOnceWith({ imageWidth: 4000, imageHeight: 3000 });
  expect(asked.mock.calls[0]?.[0]).toMatchObject({
    audio: false,
    video: { facingMode: { ideal: 'environment' }, width: { ideal: 4096 } },
  });
});

test.each(['absent', 'failing'])('image capture %s: the frame on screen, as JPEG', async (how) => {
  stub(async () => canvasStream());
  const failing = class {
    getPhotoCapabilities = () => Promise.reject(new DOMException('', 'UnknownError'));
    takePhoto = () => Promise.reject(new DOMException('', 'UnknownError'));
  };
  vi.stubGlobal('ImageCapture', how === 'absent' ? undefined : failing);
  open();
  await shutter.click();
  await expect.poll(() => onPhoto).toHaveBeenCalledOnce();
  const [photo] = onPhoto.mock.calls[0] ?? [];
  if (!photo) throw new Error('no photo');
  expect(photo.type).toBe('image/jpeg');
  const picture = await createImageBitmap(photo);
  expect([picture.width, picture.height]).toEqual([640, 480]);
  const canvas = new OffscreenCanvas(640, 480);
  const context = canvas.getContext('2d');
  context?.drawImage(picture, 0, 0);
  const [red = 0] = context?.getImageData(320, 240, 1, 1).data ?? [];
  expect(Math.abs(red - 119)).toBeLessThanOrEqual(3);
});

test('Space takes the photo, and two presses at once take one', async () => {
  stub(async () => canvasStream());
  const takes = vi.fn();
  vi.stubGlobal(
    'ImageCapture',
    class {
      constructor() {
        takes();
      }
      getPhotoCapabilities = async () => ({});
      takePhoto = async () => new Blob(['a photo'], { type: 'image/jpeg' });
    },
  );
  open();
  await expect.element(shutter).toBeEnabled();
  (document.activeElement as HTMLElement | null)?.blur();
  for (let press = 0; press < 2; press++)
    document.body.dispatchEvent(new KeyboardEvent('keydown', { key: ' ', bubbles: true }));
  await expect.poll(() => onPhoto).toHaveBeenCalledOnce();
  expect(takes).toHaveBeenCalledOnce();
});

test('the other camera: the first is let go, the next is asked for by its id', async () => {
  const asked = stub(async () => canvasStream(), 2);
  open();
  await page.getByRole('button', { name: 'Other camera' }).click();
  await expect.poll(() => asked).toHaveBeenCalledTimes(2);
  expect(stopped(opened[0])).toBe(true);
  expect(asked.mock.calls[1]?.[0]).toMatchObject({ video: { deviceId: { exact: 'camera-0' } } });
  await expect.element(shutter).toBeEnabled();
});

test('let go when the page is hidden, taken up on return, let go on leaving', async () => {
  stub(async () => canvasStream());
  open();
  await expect.element(shutter).toBeEnabled();
  const seen = vi.spyOn(document, 'visibilityState', 'get');
  seen.mockReturnValue('hidden');
  document.dispatchEvent(new Event('visibilitychange'));
  expect(stopped(opened[0])).toBe(true);
  await expect.element(shutter).toBeDisabled();
  seen.mockReturnValue('visible');
  document.dispatchEvent(new Event('visibilitychange'));
  await expect.poll(() => opened).toHaveLength(2);
  await expect.element(shutter).toBeEnabled();
  expect(stopped(opened[1])).toBe(false);
  screen?.leave();
  await expect.poll(() => stopped(opened[1])).toBe(true);
});

test('a camera that answers after she has left is let go at once', async () => {
  let answer: (stream: MediaStream) => void = () => undefined;
  stub(() => new Promise((settle) => (answer = settle)));
  open();
  await expect.poll(() => navigator.mediaDevices.getUserMedia).toHaveBeenCalled();
  screen?.leave();
  answer(canvasStream());
  await expect.poll(() => stopped(opened[0])).toBe(true);
});

test('a camera that is unplugged says so', async () => {
  stub(async () => canvasStream());
  open();
  await expect.element(shutter).toBeEnabled();
  opened[0]?.getTracks()[0]?.dispatchEvent(new Event('ended'));
  await expect.element(page.getByRole('alert')).toHaveTextContent(/camera has stopped/);
});

test('a chosen file is handed out and the chooser is empty again (A-CAM-3)', async () => {
  stub(() => Promise.reject(new DOMException('', 'NotFoundError')));
  open();
  const chooser = page.getByLabelText('Choose a photo');
  await userEvent.upload(chooser, new File(['x'], 'photo.jpg', { type: 'image/jpeg' }));
  expect(onChooseFile.mock.calls[0]?.[0].name).toBe('photo.jpg');
  expect((chooser.element() as HTMLInputElement).value).toBe('');
  const own = page.getByLabelText('Camera app').element() as HTMLInputElement;
  expect(own.getAttribute('capture')).toBe('environment');
  expect((chooser.element() as HTMLInputElement).hasAttribute('capture')).toBe(false);
});
