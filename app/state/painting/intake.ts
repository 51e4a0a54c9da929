import { type ReadonlySignal, signal } from '@preact/signals';
import type { Painting, Photo, Purpose } from '../../core/decisions/painting.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import { type PhotoHeader, photoHeader, uprightSize } from '../../core/reference/photo-header.ts';
import { photoProblem } from '../../core/reference/photo-problem.ts';
import { fitSheet } from '../../core/reference/reference.ts';
import { type Sheet, sheetOf } from '../../core/reference/sheet.ts';
import { dayInWords } from '../../core/words/dates.ts';
import { photoProblemInWords, undecodable } from '../../core/words/reference/photo-problem.ts';
import type { Store } from '../../storage/open-store.ts';
import { sha256 } from '../../storage/sha256.ts';
import { describeFault } from '../describe-fault.ts';

export type NamedBlob = Blob & { readonly name?: string };

/** A fault whose sentence is for the painter. */
export const refusedPhoto = (sentence: string): Error =>
  Object.assign(new Error(sentence), { name: 'PhotoError' });

/** A file that was moved or changed after it was chosen, or that a cloud drive did not hand over. */
async function bytesOf(file: Blob): Promise<ArrayBuffer> {
  try {
    return await file.arrayBuffer();
  } catch {
    throw refusedPhoto("The photo's file could not be read. Choose it again.");
  }
}

/**
 * A file as a photo to be kept, byte for byte, and what its header says. Rejects with a PhotoError,
 * whose message is for the painter, where the bytes already say it is no photo.
 */
export async function readPhotoFile(
  file: NamedBlob,
): Promise<{ photo: Photo; header: PhotoHeader }> {
  const bytes = await bytesOf(file);
  const seen = new Uint8Array(bytes);
  const problem = photoProblem(seen);
  const header = photoHeader(seen);
  if (problem || !header?.width || !header.height)
    throw refusedPhoto(problem ? photoProblemInWords(problem) : undecodable(header));
  const photo: Photo = {
    id: crypto.randomUUID(),
    bytes,
    mime: `image/${header.kind}`,
    sha256: await sha256(bytes),
    name: file.name ?? '',
  };
  return { photo, header };
}

interface Naming {
  /** Instead of the file's name. */
  readonly title?: string;
  readonly purpose?: Purpose;
}

/** A file's name without its ending; a photo straight from a camera has none worth showing. */
function titleOf(name: string | undefined, date: Date): string {
  const stem = (name ?? '').replace(/\.[^.]*$/, '').trim();
  if (stem) return stem;
  return `Photo of ${dayInWords(date.getTime())}`;
}

/** Size of a photo as it is decoded; rejects with a PhotoError where it can't be. */
export type PhotoSize = (photo: Blob) => Promise<PixelSize>;

/** What a container says of a photo's size and turn is believed of a JPEG alone; others are decoded. */
async function sizeOf(file: Blob, header: PhotoHeader, photoSize: PhotoSize): Promise<PixelSize> {
  if (header.kind === 'jpeg') return uprightSize(header);
  try {
    return await photoSize(file);
  } catch (fault) {
    if (fault instanceof Error && fault.name === 'PhotoError') throw fault;
    return uprightSize(header); // the worker stopped: what it reads later is checked once more
  }
}

/**
 * A photo and its painting, ready to be kept: whole photo, the sheet used last. Rejects with a
 * PhotoError, whose message is for the painter, where the bytes already say it is no photo.
 */
export async function createPainting(
  file: NamedBlob,
  lastSheet: Sheet | null,
  { title, purpose }: Naming,
  photoSize: PhotoSize,
): Promise<{ painting: Painting; photo: Photo }> {
  const { photo, header } = await readPhotoFile(file);
  const size = await sizeOf(file, header, photoSize);
  const { sheet, crop } = fitSheet(size, lastSheet ?? sheetOf('quarter', 'across'));
  const date = new Date();
  const painting: Painting = {
    schema: 1,
    id: crypto.randomUUID(),
    title: title ?? titleOf(file.name, date),
    createdAt: date.getTime(),
    updatedAt: date.getTime(),
    reference: { photoId: photo.id, crop, sheet },
    decisions: [],
    planIds: [],
    sessionIds: [],
    ...(purpose && { purpose }),
  };
  return { painting, photo };
}

/** The way in for a photo: kept on the device before anything is computed from it. */
export interface Intake {
  readonly busy: ReadonlySignal<boolean>;
  /** Why the last photo was not taken; null while all is well. */
  readonly problem: ReadonlySignal<string | null>;
  take(file: NamedBlob): Promise<void>;
  /** Only to be looked at: no plan is made. */
  study(file: NamedBlob): Promise<void>;
  /** Several photos of which she chooses one; all are taken, or none. */
  takeSeveral(files: readonly NamedBlob[]): Promise<void>;
  /** Says why a photo already kept could not be used after all. */
  refuse(sentence: string): void;
  example(): Promise<void>;
  /** Address of the example's picture. */
  readonly examplePicture: string;
}

interface IntakeNeeds {
  readonly store: Store;
  readonly photoSize: PhotoSize;
  /** The paper used last; null before the first painting. */
  readonly lastSheet: () => Sheet | null;
  readonly onPainting: (painting: Painting) => void;
  readonly onCandidates: () => void;
}

const exampleTitle = 'Seed heads, last light';
const examplePhoto = new URL('../../demo/seed-heads.jpg', import.meta.url).href;
/** The same, small: what the first screen shows comes at once, the photo when it is asked for. */
const examplePicture = new URL('../../demo/seed-heads-small.jpg', import.meta.url).href;

export function createIntake({
  store,
  photoSize,
  lastSheet,
  onPainting,
  onCandidates,
}: IntakeNeeds): Intake {
  const busy = signal(false);
  const problem = signal<string | null>(null);
  let latest = 0;

  /** Runs one way in; what an earlier one still brings counts no more. */
  async function runOnlyLatest(work: (stillNewest: () => boolean) => Promise<void>): Promise<void> {
    const mine = ++latest;
    const stillNewest = (): boolean => mine === latest;
    busy.value = true;
    problem.value = null;
    try {
      await work(stillNewest);
    } catch (fault) {
      if (stillNewest()) problem.value = describeFault(fault);
    } finally {
      if (stillNewest()) busy.value = false;
    }
  }

  const takeOne = (file: NamedBlob, how: Naming = {}): Promise<void> =>
    runOnlyLatest(async (stillNewest) => {
      const made = await createPainting(file, lastSheet(), how, photoSize);
      if (!stillNewest()) return;
      await store.addPainting(made.painting, made.photo);
      if (stillNewest()) onPainting(made.painting);
    });

  return {
    busy,
    problem,
    examplePicture,
    refuse(sentence) {
      problem.value = sentence;
    },
    take: (file) => takeOne(file),
    study: (file) => takeOne(file, { purpose: 'study' }),
    takeSeveral: (files) =>
      runOnlyLatest(async (stillNewest) => {
        const made = [];
        for (const file of files)
          made.push(await createPainting(file, lastSheet(), { purpose: 'candidate' }, photoSize));
        if (!stillNewest()) return;
        await store.addPaintings(made);
        onCandidates();
      }),
    async example() {
      const response = await fetch(examplePhoto);
      await takeOne(await response.blob(), { title: exampleTitle });
    },
  };
}

interface DropAndPasteNeeds {
  readonly window: Window;
  /** False while a photo must not push away what she is doing. */
  readonly welcome: () => boolean;
  readonly onFile: (file: File) => void;
}

/** On a desktop a photo may also be dropped on the page or pasted. Text is left to the text fields. */
export function takeDropsAndPastes({ window, welcome, onFile }: DropAndPasteNeeds): void {
  const take = (event: Event, given: DataTransfer | null): void => {
    if (!given?.types.includes('Files')) return;
    event.preventDefault(); // else the browser opens a dropped file in place of the app
    const [file] = given.files;
    if (file && welcome()) onFile(file);
  };
  window.addEventListener('dragover', (event) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = welcome() ? 'copy' : 'none';
  });
  window.addEventListener('drop', (event) => take(event, event.dataTransfer));
  window.addEventListener('paste', (event) => take(event, event.clipboardData));
}
