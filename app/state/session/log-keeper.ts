import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { SessionEvent } from '../../core/session/session-event.ts';
import type { Stand } from '../../core/session/session-stand.ts';
import type { Store } from '../../storage/open-store.ts';
import { createRetry } from '../../storage/retry-later.ts';
import { StorageProblem } from '../../storage/storage-problem.ts';
import { describeFault } from '../describe-fault.ts';

/** Keeps the lines of sessions. One that could not be kept waits and goes with the next: none is skipped. */
export interface LogKeeper {
  /** Lines that are not, or not yet, in the database. */
  readonly unkept: ReadonlySignal<readonly SessionEvent[]>;
  /** Why lines wait, in words; null as soon as all are kept. */
  readonly problem: ReadonlySignal<string | null>;
  keep(lines: readonly SessionEvent[]): void;
  /** All lines of a session: those kept, then those that wait. */
  load(sessionId: string): Promise<readonly SessionEvent[]>;
}

interface LogKeeperNeeds {
  readonly store: Pick<Store, 'events' | 'appendEvents'>;
  /** Where a session stands with all its lines; undefined of one that is not on the desk. */
  readonly standOf: (sessionId: string) => Stand | undefined;
  /** Lines have been kept. */
  readonly onKept: () => void;
  readonly retryMs?: number;
}

/** Trying again by itself is no use there. */
const lasting = (fault: unknown): boolean =>
  fault instanceof StorageProblem && (fault.kind === 'taken' || fault.kind === 'outdated');

/** `more` put behind `lines`, each line once. */
function join(
  lines: readonly SessionEvent[],
  more: readonly SessionEvent[],
): readonly SessionEvent[] {
  const there = new Set(lines.map(({ id }) => id));
  return [...lines, ...more.filter(({ id }) => !there.has(id))];
}

export function createLogKeeper(needs: LogKeeperNeeds): LogKeeper {
  const { store, standOf, onKept, retryMs } = needs;
  const unkept = signal<readonly SessionEvent[]>([]);
  const failure = signal<string | null>(null);

  const unkeptOf = (sessionId: string): readonly SessionEvent[] =>
    unkept.value.filter((line) => line.sessionId === sessionId);

  function letGo(lines: readonly SessionEvent[]): void {
    const gone = new Set(lines.map(({ id }) => id));
    unkept.value = unkept.value.filter(({ id }) => !gone.has(id));
    if (unkept.value.length === 0) failure.value = null;
  }

  /** All that waits of a session goes in one transaction, so that no hole can be left in its log. */
  function send(sessionId: string): void {
    const sent = unkeptOf(sessionId);
    if (sent.length === 0) return;
    store.appendEvents(sent, standOf(sessionId)).then(
      (isHere) => {
        // Of a painting that was discarded or replaced nothing waits, unless it is open: it may be written again whole.
        if (!isHere && standOf(sessionId)) return wait(sent, new StorageProblem('missing'));
        letGo(sent);
        if (isHere) onKept();
      },
      (fault: unknown) => wait(sent, fault),
    );
  }

  function wait(sent: readonly SessionEvent[], fault: unknown): void {
    unkept.value = join(sent, unkept.value);
    failure.value = describeFault(fault);
    if (!lasting(fault)) retry();
  }

  const retry = createRetry(() => {
    for (const id of new Set(unkept.value.map(({ sessionId }) => sessionId))) send(id);
  }, retryMs);

  return {
    unkept,
    problem: computed(() => (unkept.value.length > 0 ? failure.value : null)),
    keep(lines) {
      unkept.value = [...unkept.value, ...lines];
      for (const id of new Set(lines.map(({ sessionId }) => sessionId))) send(id);
    },
    async load(sessionId) {
      return join(await store.events(sessionId), unkeptOf(sessionId));
    },
  };
}
