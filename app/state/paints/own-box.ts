import { type ReadonlySignal, signal } from '@preact/signals';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import { emptyBox, type OwnBox, ownPaints } from '../../core/paint/own-box.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import type { Store } from '../../storage/open-store.ts';
import { describeFault } from '../describe-fault.ts';

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

const settingName = 'paint box';

/** What a browser gives back may be of another version, or spoilt: then all paints count again. */
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
  store: Pick<Store, 'setting' | 'keepSetting'>,
  client: Pick<AnalysisClient, 'paintBox'>,
): OwnBoxState {
  const box = signal(emptyBox);
  const cards = signal<readonly PaintCard[]>([]);
  const problem = signal<string | null>(null);
  let carded: readonly unknown[] | null = null;

  const ready = store.setting(settingName).then(
    (kept) => {
      if (isBox(kept)) box.value = kept;
    },
    () => {}, // said by the store itself; the whole list counts until then
  );

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
      box.value = how(box.value); // shown at once, kept right after
      try {
        await store.keepSetting(settingName, box.value);
        problem.value = null;
      } catch (fault) {
        problem.value = describeFault(fault);
      }
      if (carded) await open();
    },
  };
}
