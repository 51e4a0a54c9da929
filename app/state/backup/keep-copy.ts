import { type ReadonlySignal, signal } from '@preact/signals';
import { handedOn } from '../../core/words/notices.ts';
import type { BackupScope } from '../../storage/backup/write-backup.ts';
import type { Store } from '../../storage/open-store.ts';
import { describeFault } from '../describe-fault.ts';
import { noteCopyTime } from './copy-reminder.ts';
import { fileWords, type HandOut } from './hand-out.ts';

/** What she may hand out: a copy; or what is left of a painting that is damaged. */
export type CopyScope = BackupScope | { readonly kind: 'remains'; readonly id: string };

export interface MadeCopy {
  readonly file: File;
  readonly scope: CopyScope;
  readonly paintings: number;
  /** Of remains: how many photos. */
  readonly photos?: number;
  /** What is damaged, and so not in it. */
  readonly leftOut: readonly string[];
  readonly canShare: boolean;
}

/** A copy being made, and handed out. */
export interface KeepCopy {
  /** How much of it is done, 0..1; null while none is being made. */
  readonly part: ReadonlySignal<number | null>;
  readonly made: ReadonlySignal<MadeCopy | null>;
  /** Where it went, in words; empty before. */
  readonly handedOut: ReadonlySignal<string>;
  readonly problem: ReadonlySignal<string | null>;
  /** Makes it, then reads it through as one that is brought back. */
  make(what: { scope: CopyScope; title: string; places: boolean }): Promise<void>;
  stop(): void;
  share(): Promise<void>;
  save(): Promise<void>;
}

interface Needs {
  readonly store: Pick<Store, 'backups' | 'setting' | 'keepSetting'>;
  readonly handOut: HandOut;
  /** The build of the app. */
  readonly app: string;
  readonly readTimeMs: () => number;
}

/** Bytes are given to the browser in parts of this size, so that it may put them on its disk. */
const partBytes = 8_000_000;

/** A sink whose bytes become a file. */
function fileSink() {
  const parts: Blob[] = [];
  let waiting: Uint8Array<ArrayBuffer>[] = [];
  let bytes = 0;
  const pass = (): void => {
    parts.push(new Blob(waiting));
    waiting = [];
    bytes = 0;
  };
  const sink = new WritableStream<Uint8Array>({
    write(chunk) {
      waiting.push(new Uint8Array(chunk)); // the writer may use its own again
      bytes += chunk.length;
      if (bytes > partBytes) pass();
    },
    close: pass,
  });
  return { sink, file: (name: string) => new File(parts, name, { type: 'application/zip' }) };
}

/** 'Firstwash seed heads 2026-11-30.zip'. */
function nameOf(title: string, timeMs: number): string {
  const date = new Date(timeMs);
  const day = [date.getFullYear(), date.getMonth() + 1, date.getDate()]
    .map((figure) => String(figure).padStart(2, '0'))
    .join('-');
  return `${['Firstwash', fileWords(title), day].filter(Boolean).join(' ')}.zip`;
}

export function createKeepCopy({ store, handOut, app, readTimeMs }: Needs): KeepCopy {
  const part = signal<number | null>(null);
  const made = signal<MadeCopy | null>(null);
  const handedOut = signal('');
  const problem = signal<string | null>(null);
  let stopping = new AbortController();

  async function attempt(work: () => Promise<void>): Promise<void> {
    problem.value = null;
    try {
      await work();
    } catch (fault) {
      if (!stopping.signal.aborted) problem.value = describeFault(fault);
    }
  }

  /** Making it, and reading it through, are one piece of work on the screen. */
  const tell =
    (from: number, to: number) =>
    (done: number): void => {
      part.value = from + (to - from) * done;
    };

  async function give(way: (file: File) => Promise<boolean>, words: string): Promise<void> {
    const copy = made.value;
    if (!copy) return;
    await attempt(async () => {
      if (!(await way(copy.file))) return;
      handedOut.value = words;
      if (copy.scope.kind === 'everything')
        await noteCopyTime(store, { copyAt: readTimeMs(), awayAt: 0 }).catch(() => undefined); // tried again by itself
    });
  }

  return {
    part,
    made,
    handedOut,
    problem,
    async make({ scope, title, places }) {
      stopping.abort();
      stopping = new AbortController();
      const { signal: stopped } = stopping;
      made.value = null;
      handedOut.value = '';
      part.value = 0;
      await attempt(async () => {
        const backups = await store.backups();
        const { sink, file } = fileSink();
        const madeAt = readTimeMs();
        const wish = { places, app, madeAt };
        if (scope.kind === 'remains') {
          const photos = await backups.writeRemains(stopped, scope.id, wish, sink);
          const left = file(nameOf(`remains of ${title}`, madeAt));
          const facts = { paintings: 0, photos, leftOut: [], canShare: handOut.canShare([left]) };
          made.value = { file: left, scope, ...facts };
          return;
        }
        const onPart = tell(0, 0.7);
        const written = await backups.write(stopped, { ...wish, scope, onPart }, sink);
        const copy = file(nameOf(title, madeAt));
        await backups.check(stopped, copy, tell(0.7, 1));
        made.value = { file: copy, scope, ...written, canShare: handOut.canShare([copy]) };
      });
      if (stopping.signal === stopped) part.value = null;
    },
    stop() {
      stopping.abort();
      part.value = null;
    },
    share: () => give((file) => handOut.share([file]), handedOn),
    save: () =>
      give((file) => handOut.save(file), 'Saved. Now put it somewhere else than on this device.'),
  };
}
