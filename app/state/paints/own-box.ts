import { type ReadonlySignal, signal } from '@preact/signals';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import { emptyBox, type OwnBox, ownPaints } from '../../core/paint/own-box.ts';
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
}

const isBox = (value: unknown): value is OwnBox =>
  typeof value === 'object' &&
  value !== null &&
  'schema' in value &&
  value.schema === 1 &&
  'owned' in value &&
  (value.owned === null || Array.isArray(value.owned)) &&
  'paints' in value &&
  Array.isArray(value.paints) &&
  'gone' in value &&
  Array.isArray(value.gone);

export function createOwnBox(
  store: SettingStore,
  client: Pick<AnalysisClient, 'paintBox'>,
): OwnBoxState {
  // Of a spoilt box nothing is taken: then all paints count again.
  const kept = keptSignal(
    store,
    'paint box',
    (stored) => (isBox(stored) ? stored : emptyBox),
    emptyBox,
  );
  const { current: box, ready } = kept;
  const cards = signal<readonly PaintCard[]>([]);
  const problem = signal<string | null>(null);
  let carded: readonly unknown[] | null = null;

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
    async change(how) {
      await ready;
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
