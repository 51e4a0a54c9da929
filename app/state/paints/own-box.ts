import { type ReadonlySignal, signal } from '@preact/signals';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import { emptyBox, type FormerBox, type OwnBox, ownPaints } from '../../core/paint/own-box.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import type { Store } from '../../storage/open-store.ts';
import { createRetry } from '../../storage/retry-later.ts';
import { StorageProblem } from '../../storage/storage-problem.ts';
import { describeFault } from '../describe-fault.ts';

/** Her paint box, the same for all paintings: kept at every change; one that could not be is tried again by itself. */
export interface OwnBoxState {
  readonly box: ReadonlySignal<OwnBox>;
  /** Every paint known, built-in and her own; empty until `open`. */
  readonly cards: ReadonlySignal<readonly PaintCard[]>;
  /** A sentence for the painter; null while all is well. */
  readonly problem: ReadonlySignal<string | null>;
  /** Settles when what was kept is there. */
  readonly ready: Promise<void>;
  /** Works out the cards. */
  open(): Promise<void>;
  change(how: (before: OwnBox) => OwnBox): Promise<void>;
  /** Takes the box that is kept by now: a copy was brought back, or another window has changed it. */
  readAgain(): Promise<void>;
}

const isBox = (value: unknown): value is OwnBox | FormerBox =>
  typeof value === 'object' &&
  value !== null &&
  'schema' in value &&
  (value.schema === 1 || value.schema === 2) &&
  'owned' in value &&
  (value.owned === null || Array.isArray(value.owned)) &&
  'paints' in value &&
  Array.isArray(value.paints) &&
  'gone' in value &&
  Array.isArray(value.gone);

type Change = (before: OwnBox) => OwnBox;

const name = 'paint box';

export function createOwnBox(
  store: Pick<Store, 'setting' | 'changeSetting'>,
  client: Pick<AnalysisClient, 'paintBox' | 'renewBox'>,
  onKept: () => void = () => {},
  retryMs?: number,
): OwnBoxState {
  let former: FormerBox | null = null;
  /** As it is in the database, by what this window knows. */
  let kept: OwnBox = emptyBox;
  /** Changes that are shown and not, or not yet, kept. */
  let waiting: readonly Change[] = [];
  let last: Promise<void> = Promise.resolve();
  const box = signal(emptyBox);

  /** Of a spoilt box nothing is taken: then it is as if nothing was ticked. */
  function parse(stored: unknown): OwnBox {
    if (!isBox(stored)) return emptyBox;
    if (stored.schema === 2) return stored;
    former = stored;
    return emptyBox;
  }
  function show(now: OwnBox): void {
    kept = now;
    box.value = waiting.reduce((before, how) => how(before), now);
  }
  const read = (): Promise<void> =>
    store.setting(name).then(
      (stored) => show(parse(stored)),
      () => {}, // said by the store itself
    );
  const ready = read().then(renew);
  const cards = signal<readonly PaintCard[]>([]);
  const problem = signal<string | null>(null);
  let carded: readonly unknown[] | null = null;

  /** A box kept by an earlier version stays as it is until its own paints are by today's table. */
  async function renew(): Promise<void> {
    if (!former) return;
    try {
      const renewed = await client.renewBox(new AbortController().signal, former);
      show(await store.changeSetting(name, () => renewed));
      former = null;
    } catch (fault) {
      problem.value = describeFault(fault);
    }
  }

  /**
   * One after the other, and over what is kept by then: another window may have changed the box, or brought one back
   * with a copy. Where all was cleared away, what was shown counts.
   */
  function send(): Promise<void> {
    last = last.then(async () => {
      let refused: string | null = null;
      while (waiting.length > 0) {
        // One that can never be kept is found by sending each alone; it must not hold up the rest.
        const sent = refused === null ? waiting : waiting.slice(0, 1);
        try {
          const now = await store.changeSetting(name, (stored) =>
            sent.reduce((before, how) => how(before), stored === null ? kept : parse(stored)),
          );
          waiting = waiting.filter((each) => !sent.includes(each));
          problem.value = refused;
          show(now);
          onKept();
        } catch (fault) {
          problem.value = describeFault(fault);
          const kind = fault instanceof StorageProblem ? fault.kind : null;
          if (kind !== 'broken-figure') {
            if (kind !== 'outdated') retry();
            return;
          }
          refused = problem.value;
          if (sent.length === 1) waiting = waiting.filter((each) => each !== sent[0]);
        }
      }
    });
    return last;
  }

  const retry = createRetry(() => void send(), retryMs);

  async function open(): Promise<void> {
    await ready;
    const { paints, gone } = box.value;
    if (carded && carded[0] === paints && carded[1] === gone) return;
    carded = [paints, gone];
    try {
      cards.value = await client.paintBox(new AbortController().signal, ownPaints(box.value));
    } catch (fault) {
      carded = null;
      problem.value = describeFault(fault);
    }
  }

  return {
    box,
    cards,
    problem,
    ready,
    open,
    async readAgain() {
      await ready;
      await read();
      await renew();
      if (carded) await open();
    },
    async change(how) {
      await ready;
      await renew();
      if (former) return; // else what was kept of it would be lost
      waiting = [...waiting, how];
      box.value = how(box.value); // shown at once, kept right after
      await send();
      if (carded) await open();
    },
  };
}
