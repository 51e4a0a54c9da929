import { remedyFor } from '../remedies.ts';
import { type Trouble, troubleWords } from '../trouble.ts';
import type { Wetness } from '../wetness.ts';
import { elapsedMs } from './elapsed-ms.ts';
import type { SessionEvent } from './session-event.ts';

/** Something noted along the way. `atMinutes` counts from the first event of the session. */
export interface TroubleNote {
  readonly atMinutes: number;
  readonly stepKey: string;
  readonly words: string;
  readonly trouble: Trouble;
  readonly wetness: Wetness;
  readonly remedy: string;
}

export interface TextNote {
  readonly atMinutes: number;
  readonly text: string;
}

/** `at` is wall time, ms since 1970. */
export interface PhotoNote {
  readonly photoId: string;
  readonly at: number;
  readonly stepKey: string;
}

export interface SessionNotes {
  readonly troubles: readonly TroubleNote[];
  readonly notes: readonly TextNote[];
  readonly photos: readonly PhotoNote[];
  /** Steps tried on a scrap, each once. */
  readonly practised: readonly string[];
}

/** The same trouble told again so soon is the same one, with the wetness put right (own figure). */
const putRightMinutes = 2;

/** What went wrong, what she noted, which photos she took and what she tried on a scrap, from a log in order. */
export function sessionNotes(log: readonly SessionEvent[]): SessionNotes {
  const troubles: TroubleNote[] = [];
  const notes: TextNote[] = [];
  const photos: PhotoNote[] = [];
  const practised = new Set<string>();
  let atMs = 0;
  let last: SessionEvent | null = null;
  for (const event of log) {
    atMs += last ? elapsedMs(last, event) : 0;
    last = event;
    const { what } = event;
    const atMinutes = atMs / 60_000;
    if (what.kind === 'note' && what.text.trim() !== '') notes.push({ atMinutes, text: what.text });
    if (what.kind === 'photo')
      photos.push({ photoId: what.photoId, at: event.wallMs, stepKey: what.key });
    if (what.kind === 'practise') practised.add(what.key);
    if (what.kind !== 'trouble') continue;
    const { key: stepKey, trouble, wetness } = what;
    const words = troubleWords[trouble];
    const before = troubles.at(-1);
    const putRight =
      before?.trouble === trouble &&
      before.stepKey === stepKey &&
      atMinutes - before.atMinutes < putRightMinutes;
    if (putRight) troubles.pop();
    troubles.push({
      atMinutes: putRight ? before.atMinutes : atMinutes,
      stepKey,
      words,
      trouble,
      wetness,
      remedy: remedyFor(trouble, wetness),
    });
  }
  return { troubles, notes, photos, practised: [...practised] };
}
