import { BackupProblem } from '../../storage/backup/backup-problem.ts';

/** How a file leaves the app: whichever way this browser has. */
export interface HandOut {
  /** Whether the share sheet takes files like these. */
  canShare(files: readonly File[]): boolean;
  /** True once it was handed to another app; false where she closed the sheet. */
  share(files: readonly File[]): Promise<boolean>;
  /** To a place she picks, or among the downloads; false where she closed the picker. Rejects with a BackupProblem. */
  save(file: File): Promise<boolean>;
}

type SavePicker = (options: {
  suggestedName: string;
  types?: readonly { accept: Record<string, readonly string[]> }[];
}) => Promise<{ createWritable(): Promise<WritableStream<Uint8Array>> }>;

/** Words for the name of a file: what every file system takes. */
export const fileWords = (title: string): string =>
  title
    .replace(/[^\p{L}\p{N},'-]+/gu, ' ')
    .slice(0, 60)
    .trim();

const closed = (fault: unknown): boolean =>
  fault instanceof DOMException && fault.name === 'AbortError';

/** Web Share (W3C), File System Access (WICG) where there is one, else a download. */
export function createHandOut(window: Window & typeof globalThis): HandOut {
  const { navigator, document } = window;
  const pick = (window as { showSaveFilePicker?: SavePicker }).showSaveFilePicker;

  function download(file: File): void {
    const address = URL.createObjectURL(file);
    const link = document.createElement('a');
    link.href = address;
    link.download = file.name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 60_000); // some browsers read it only now
  }

  return {
    canShare: (files) => Boolean(navigator.canShare?.({ files: [...files] })),
    async share(files) {
      try {
        await navigator.share({ files: [...files], title: files[0]?.name ?? '' });
        return true;
      } catch (fault) {
        if (closed(fault)) return false;
        throw new BackupProblem('unwritten', fault);
      }
    },
    async save(file) {
      if (!pick) {
        download(file);
        return true;
      }
      const ending = /\.[a-z]+$/.exec(file.name)?.[0] ?? '.zip';
      const types = [{ accept: { [file.type]: [ending] } }];
      try {
        const place = await pick.call(window, { suggestedName: file.name, types });
        await file.stream().pipeTo(await place.createWritable());
        return true;
      } catch (fault) {
        if (closed(fault)) return false;
        throw new BackupProblem('unwritten', fault);
      }
    },
  };
}
