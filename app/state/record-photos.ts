import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Photo } from '../model/painting.ts';
import type { PhotoHeader } from '../model/photo/header-fields.ts';
import { undecodable } from '../model/photo-problem.ts';
import type { Easel } from './easel.ts';
import type { Keepsakes } from './keepsakes.ts';
import { type NamedBlob, photoOf, refusedPhoto } from './photo-of.ts';
import { sentenceOf } from './sentence-of.ts';

/** Photos for the record of one session: the bytes first, then the line in the log. */
export interface RecordPhotos {
  readonly keeping: ReadonlySignal<boolean>;
  /** Whether the photo taken last stands in the record: no more once it is taken back. */
  readonly stands: ReadonlySignal<boolean>;
  /** A sentence for the painter; null while all is well. */
  readonly problem: ReadonlySignal<string | null>;
  /** Gives a photo its line whose window was closed between the two. */
  open(): Promise<void>;
  take(file: NamedBlob): Promise<void>;
}

interface Needs {
  readonly keepsakes: Pick<Keepsakes, 'keepRecordPhoto' | 'lastRecordPhoto'>;
  readonly easel: Pick<Easel, 'log' | 'record' | 'tell' | 'step'>;
  readonly sessionId: string;
}

const elsewhere =
  'The photo is kept on this device, but this session goes on in another window: take over here, and it comes into the record.';

export function createRecordPhotos({ keepsakes, easel, sessionId }: Needs): RecordPhotos {
  const keeping = signal(false);
  const latest = signal<string | null>(null);
  const problem = signal<string | null>(null);

  async function open(): Promise<void> {
    const last = await keepsakes.lastRecordPhoto(sessionId).catch(() => null);
    if (last && !hasLine(easel, last.photoId)) easel.tell({ kind: 'photo', ...last });
  }

  async function take(file: NamedBlob): Promise<void> {
    const key = easel.step.value?.key ?? '';
    keeping.value = true;
    latest.value = null;
    problem.value = null;
    try {
      const { photo, header } = await photoOf(file);
      await seeable(photo, header);
      await keepsakes.keepRecordPhoto(sessionId, photo, key);
      easel.tell({ kind: 'photo', photoId: photo.id, key });
      latest.value = photo.id;
      if (!hasLine(easel, photo.id)) problem.value = elsewhere;
    } catch (fault) {
      problem.value = sentenceOf(fault);
    }
    keeping.value = false;
  }

  const stands = computed(
    () => easel.record.value?.photos.some(({ photoId }) => photoId === latest.value) ?? false,
  );
  return { keeping, stands, problem, open, take };
}

const hasLine = ({ log }: Pick<Easel, 'log'>, photoId: string): boolean =>
  log.value.some(({ what }) => what.kind === 'photo' && what.photoId === photoId);

/** An img asks for the head of a file only: a phone's whole photo is never laid out in memory here. */
async function seeable(photo: Photo, header: PhotoHeader): Promise<void> {
  const address = URL.createObjectURL(new Blob([photo.bytes], { type: photo.mime }));
  const image = new Image();
  try {
    await new Promise((seen, failed) => {
      image.onload = seen;
      image.onerror = () => failed(refusedPhoto(undecodable(header)));
      image.src = address;
    });
  } finally {
    URL.revokeObjectURL(address);
  }
}
