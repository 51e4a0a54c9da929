import { type ReadonlySignal, signal } from '@preact/signals';
import { noteDraftName } from '../storage/session-keepsakes.ts';
import type { Easel } from './easel.ts';
import type { Keepsakes } from './keepsakes.ts';

/** A note being typed: every change is kept, so it is not lost with the window. */
export interface NoteDraft {
  readonly text: ReadonlySignal<string>;
  /** Brings back what was kept, unless she types already. */
  open(): Promise<void>;
  change(text: string): void;
  /** Puts it in the log; false where another window has the session, and then it stays as it is. */
  keep(): boolean;
}

interface Needs {
  readonly keepsakes: Keepsakes;
  readonly easel: Pick<Easel, 'log' | 'tell'>;
  readonly sessionId: string;
}

export function createNoteDraft({ keepsakes, easel, sessionId }: Needs): NoteDraft {
  const name = noteDraftName(sessionId);
  const text = signal('');
  let typed = false;
  const quietly = (write: Promise<void>): void => {
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
      quietly(keepsakes.keepSetting(name, next));
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
          quietly(keepsakes.forgetSetting(name));
      });
      return true;
    },
  };
}
