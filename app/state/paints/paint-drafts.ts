import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import { ownPaints, withOwnPaint } from '../../core/paint/own-box.ts';
import type { Paint, TubePaint } from '../../core/paint/paint.ts';
import {
  draftOf,
  emptyDraft,
  newPaint,
  type PaintDraft,
  type PaintDrafts,
  type SettledDraft,
  settleDraft,
} from '../../core/paint/paint-draft.ts';
import type { PigmentTraits } from '../../core/paint/paint-traits.ts';
import { describeFault } from '../describe-fault.ts';
import { keptSignal, type SettingStore } from '../kept-signal.ts';
import type { OwnBoxState } from './own-box.ts';

/** Paints of her own being typed: every change is kept, so nothing typed is lost with the window. */
export interface PaintDraftsState {
  readonly drafts: ReadonlySignal<PaintDrafts>;
  /** A sentence for the painter; null while all is well. */
  readonly problem: ReadonlySignal<string | null>;
  /** Brings what was kept and what is remembered of pigments. */
  open(): Promise<void>;
  /** A draft of a new paint under `newPaint`, or of one of hers; goes on with the one kept. */
  begin(key: string): void;
  change(key: string, how: Partial<PaintDraft>): void;
  drop(key: string): void;
  settle(key: string): SettledDraft | null;
  /** Puts it in the box; false where something is missing or could not be done. */
  save(key: string): Promise<boolean>;
}

const isDraft = (value: unknown): value is PaintDraft =>
  typeof value === 'object' &&
  value !== null &&
  'name' in value &&
  typeof value.name === 'string' &&
  'ci' in value &&
  typeof value.ci === 'string' &&
  'hers' in value;

const isDrafts = (value: unknown): value is PaintDrafts =>
  typeof value === 'object' && value !== null && Object.values(value).every(isDraft);

interface Needs {
  readonly store: SettingStore;
  readonly client: Pick<AnalysisClient, 'pigmentTable' | 'opticsLike'>;
  readonly ownBox: Pick<OwnBoxState, 'box' | 'cards' | 'change'>;
}

export function createPaintDrafts({ store, client, ownBox }: Needs): PaintDraftsState {
  const kept = keptSignal<PaintDrafts>(
    store,
    'paint draft',
    (stored, typed) => (isDrafts(stored) ? { ...stored, ...typed } : typed),
    {},
  );
  const { current: drafts, ready } = kept;
  const table = signal<readonly PigmentTraits[]>([]);
  const problem = signal<string | null>(null);
  const attempt = async (work: () => Promise<unknown>): Promise<boolean> => {
    try {
      await work();
      problem.value = null;
      return true;
    } catch (fault) {
      problem.value = describeFault(fault);
      return false;
    }
  };
  const never = (): AbortSignal => new AbortController().signal;

  function put(next: PaintDrafts): void {
    problem.value = null;
    kept.set(next).catch(() => undefined); // it says so itself
  }
  function drop(key: string): void {
    const { [key]: _, ...others } = drafts.value;
    put(others);
  }
  const ownPaint = (key: string): Paint | undefined =>
    ownPaints(ownBox.box.value).find(({ id }) => id === key);

  function settle(key: string): SettledDraft | null {
    const draft = drafts.value[key];
    const measured = ownPaint(key)?.optics?.from === 'measured';
    return draft
      ? settleDraft(draft, { cards: ownBox.cards.value, table: table.value, measured })
      : null;
  }

  /** Measured optics stay; else those of the built-in paint. */
  async function opticsOf(
    like: string | null,
    before: Paint | undefined,
  ): Promise<Pick<Paint, keyof TubePaint | 'optics'> | null> {
    if (like === null) return before ?? null;
    const found = await client.opticsLike(never(), like);
    return found && { ...found, optics: { from: 'like', id: like } };
  }

  async function save(key: string): Promise<boolean> {
    const made = settle(key);
    if (!made || Object.values(made.problems).some(Boolean)) return false;
    const before = ownPaint(key);
    const { name, ci, properties, fromMemory, like } = made;
    return attempt(async () => {
      const optics = await opticsOf(like, before);
      if (!optics) throw new TypeError(`No built-in paint ${like}`);
      const { K, S, strength, mostLoad, optics: from } = optics;
      await ownBox.change((box) =>
        withOwnPaint(box, {
          id: before?.id ?? `own-${crypto.randomUUID()}`,
          name,
          ci,
          K,
          S,
          ...(strength && { strength }),
          ...(mostLoad && { mostLoad }),
          properties,
          fromMemory,
          ...(from && { optics: from }),
        }),
      );
      drop(key);
    });
  }

  return {
    drafts,
    problem: computed(() => problem.value ?? kept.problem.value),
    async open() {
      await ready;
      if (table.value.length > 0) return;
      await attempt(async () => {
        table.value = await client.pigmentTable(never());
      });
    },
    begin(key) {
      if (drafts.value[key]) return;
      const paint = ownPaint(key);
      if (key !== newPaint && !paint) return;
      put({ ...drafts.value, [key]: paint ? draftOf(paint) : emptyDraft });
    },
    change(key, how) {
      const before = drafts.value[key];
      if (before) put({ ...drafts.value, [key]: { ...before, ...how } });
    },
    drop,
    settle,
    save,
  };
}
