import { type ReadonlySignal, signal } from '@preact/signals';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import { emptyBox, type FormerBox, type OwnBox, ownPaints } from '../../core/paint/own-box.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import { describeFault } from '../describe-fault.ts';
import { keptSignal, type SettingStore } from '../kept-signal.ts';

/** Her paint box, the same for all paintings: kept at every change. */
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
  /** Takes the box that is kept by now: a copy was brought back. */
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

export function createOwnBox(
  store: SettingStore,
  client: Pick<AnalysisClient, 'paintBox' | 'renewBox'>,
): OwnBoxState {
  let former: FormerBox | null = null;
  // Of a spoilt box nothing is taken: then it is as if nothing was ticked.
  const kept = keptSignal<OwnBox>(
    store,
    'paint box',
    (stored) => {
      if (!isBox(stored)) return emptyBox;
      if (stored.schema === 2) return stored;
      former = stored;
      return emptyBox;
    },
    emptyBox,
  );
  const { current: box } = kept;
  const ready = kept.ready.then(renew);
  const cards = signal<readonly PaintCard[]>([]);
  const problem = signal<string | null>(null);
  let carded: readonly unknown[] | null = null;

  /** A box kept by an earlier version stays as it is until its own paints are by today's table. */
  async function renew(): Promise<void> {
    if (!former) return;
    try {
      await kept.set(await client.renewBox(new AbortController().signal, former));
      former = null;
    } catch (fault) {
      problem.value = describeFault(fault);
    }
  }

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
      await kept.readAgain();
      await renew();
      if (carded) await open();
    },
    async change(how) {
      await ready;
      await renew();
      if (former) return; // else what was kept of it would be lost
      try {
        await kept.set(how(box.value));
        problem.value = null;
      } catch (fault) {
        problem.value = describeFault(fault);
      }
      if (carded) await open();
    },
  };
}
