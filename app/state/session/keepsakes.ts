import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Photo } from '../../core/decisions/painting.ts';
import type { PhotoHeader } from '../../core/reference/photo-header.ts';
import { undecodable } from '../../core/words/reference/photo-problem.ts';
import type { Store } from '../../storage/open-store.ts';
import { noteDraftName } from '../../storage/sessions.ts';
import { describeFault } from '../describe-fault.ts';
import { type NamedBlob, readPhotoFile, refusedPhoto } from '../painting/intake.ts';
import type { Easel } from './easel.ts';

/** Where a session keeps what stands beside its log: a note being typed, the bytes of photos. */
export type Keepsakes = Pick<
  Store,
  | 'photo'
  | 'keepRecordPhoto'
  | 'lastRecordPhoto'
  | 'setting'
  | 'keepSetting'
  | 'forgetSetting'
  | 'settled'
  | 'saving'
>;

/** A note being typed: every change is kept, so it is not lost with the window. */
interface NoteDraft {
  readonly text: ReadonlySignal<string>;
  /** Brings back what was kept, unless she types already. */
  open(): Promise<void>;
  change(text: string): void;
  /** Puts it in the log; false where another window has the session, and then it stays as it is. */
  keep(): boolean;
}

interface NoteDraftNeeds {
  readonly keepsakes: Keepsakes;
  readonly easel: Pick<Easel, 'log' | 'tell'>;
  readonly sessionId: string;
}

export function createNoteDraft({ keepsakes, easel, sessionId }: NoteDraftNeeds): NoteDraft {
  const name = noteDraftName(sessionId);
  const text = signal('');
  let typed = false;
  const ignoreFailure = (write: Promise<void>): void => {
    write.catch(() => {}); // 'not saved' stands at the top of the easel
  };
  /** Killed between the line in the log and the end of its draft: the draft is done with. */
  const inLog = (draft: string): boolean =>
    easel.log.value.some(({ what }) => what.kind === 'note' && what.text === draft.trim());

  return {
    text,
    async open() {
      const kept = await keepsakes.setting(name).catch(() => null);
      if (!typed && typeof kept === 'string' && !inLog(kept)) text.value = kept;
    },
    change(next) {
      typed = true;
      text.value = next;
      ignoreFailure(keepsakes.keepSetting(name, next));
    },
    keep() {
      const lines = easel.log.value.length;
      easel.tell({ kind: 'note', text: text.value.trim() });
      if (easel.log.value.length === lines) return false;
      typed = true;
      text.value = '';
      // Only once the line is kept, and unless she types the next one by then.
      void keepsakes.settled().then(() => {
        if (text.value === '' && keepsakes.saving.value === 'saved')
          ignoreFailure(keepsakes.forgetSetting(name));
      });
      return true;
    },
  };
}

/** Photos for the record of one session: the bytes first, then the line in the log. */
interface RecordPhotos {
  readonly keeping: ReadonlySignal<boolean>;
  /** Whether the photo taken last stands in the record: no more once it is taken back. */
  readonly stands: ReadonlySignal<boolean>;
  /** A sentence for the painter; null while all is well. */
  readonly problem: ReadonlySignal<string | null>;
  /** Gives a photo its line whose window was closed between the two. */
  open(): Promise<void>;
  take(file: NamedBlob): Promise<void>;
}

interface RecordPhotosNeeds {
  readonly keepsakes: Pick<Keepsakes, 'keepRecordPhoto' | 'lastRecordPhoto'>;
  readonly easel: Pick<Easel, 'log' | 'record' | 'tell' | 'step'>;
  readonly sessionId: string;
}

const elsewhere =
  'The photo is kept on this device, but this session goes on in another window: take over here, and it comes into the record.';

export function createRecordPhotos({
  keepsakes,
  easel,
  sessionId,
}: RecordPhotosNeeds): RecordPhotos {
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
      const { photo, header } = await readPhotoFile(file);
      await seeable(photo, header);
      await keepsakes.keepRecordPhoto(sessionId, photo, key);
      easel.tell({ kind: 'photo', photoId: photo.id, key });
      latest.value = photo.id;
      if (!hasLine(easel, photo.id)) problem.value = elsewhere;
    } catch (fault) {
      problem.value = describeFault(fault);
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
