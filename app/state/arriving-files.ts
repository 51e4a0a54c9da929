/** Where the service worker puts what was handed to the app by the share sheet (workers/service.worker.ts). */
const sharedCache = 'firstwash shared';

interface LaunchQueue {
  setConsumer(
    consumer: (launch: { files?: readonly { getFile(): Promise<File> }[] }) => void,
  ): void;
}

interface Needs {
  readonly window: Window & typeof globalThis;
  /** Nothing may push a session off the screen. */
  readonly welcome: () => boolean;
  readonly onPhotos: (photos: File[]) => void;
  readonly onCopy: (copy: File) => void;
}

/** 'PK': a ZIP, whatever it is called (PKWARE APPNOTE 4.3.7). */
async function isZip(file: Blob): Promise<boolean> {
  try {
    const [first, second] = new Uint8Array(await file.slice(0, 2).arrayBuffer());
    return first === 0x50 && second === 0x4b;
  } catch {
    return false; // not to be read: the one who takes it says so
  }
}

/** Files as they come in from outside: a copy is looked through, photos become paintings. */
async function sort(files: readonly File[], { welcome, onPhotos, onCopy }: Needs): Promise<void> {
  if (!welcome()) return;
  const [first] = files;
  if (first && (await isZip(first))) onCopy(first);
  else if (files.length > 0) onPhotos([...files]);
}

/** What was shared before this window was opened; taken once. Rejects where storage is shut off, or there is none. */
async function takeShared(window: Needs['window']): Promise<File[]> {
  const cache = await window.caches.open(sharedCache); // reading the very property throws there
  const files: File[] = [];
  for (const request of await cache.keys()) {
    const answer = await cache.match(request);
    await cache.delete(request);
    if (!answer) continue;
    const name = decodeURIComponent(answer.headers.get('x-name') ?? '');
    const type = answer.headers.get('content-type') ?? '';
    files.push(new File([await answer.blob()], name, { type }));
  }
  return files;
}

/**
 * Files opened with the installed app (File Handling, WICG), or handed to it by a share sheet (Web Share Target, W3C).
 */
export function takeArrivingFiles(needs: Needs): void {
  const { window } = needs;
  const queue = (window as { launchQueue?: LaunchQueue }).launchQueue;
  queue?.setConsumer(({ files = [] }) => {
    Promise.all(files.map((each) => each.getFile())).then(
      (found) => sort(found, needs),
      () => undefined, // taken away in between
    );
  });
  takeShared(window).then(
    (found) => sort(found, needs),
    () => undefined, // a browser that keeps nothing
  );
}
