import type { EventBody, SessionEvent } from './session-event.ts';

/** The log without what she took back. The lines stay in the log; they only count no more. */
export function standingEvents(events: readonly SessionEvent[]): readonly SessionEvent[] {
  const gone = new Set(
    events.flatMap(({ what }) => (what.kind === 'taken-back' ? what.events : [])),
  );
  return gone.size > 0 ? events.filter(({ id }) => !gone.has(id)) : events;
}

/** What she can take back, by the words on its button. */
const actWords: Partial<Record<EventBody['kind'], string>> = {
  'step-begun': 'Start',
  'stroke-down': 'Stroke is down',
  'painting-done': 'Done',
  'step-done': 'Done',
  scrap: 'Scrap compared',
  'still-wet': 'Still wet',
  'shine-gone': 'Shine gone',
  'dry-now': 'It is bone dry',
  back: 'Back',
  paused: 'Pause',
  resumed: 'Go on',
  photo: 'Photo for the record',
};

export interface LastAct {
  /** Ids of all that this one tap appended. */
  readonly events: readonly string[];
  readonly words: string;
}

/** The last tap that can be taken back; null where there is none. */
export function lastAct(log: readonly SessionEvent[]): LastAct | null {
  const acts = standingEvents(log).filter(({ what }) => what.kind in actWords);
  const last = acts.at(-1);
  if (!last) return null;
  const atOnce = acts.filter(
    ({ wallMs, monoMs, bootId }) =>
      wallMs === last.wallMs && monoMs === last.monoMs && bootId === last.bootId,
  );
  const words = actWords[atOnce[0]?.what.kind ?? last.what.kind] ?? '';
  return { events: atOnce.map(({ id }) => id), words };
}
