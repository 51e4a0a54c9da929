import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import type { Point } from '../../core/colour/lab.ts';
import type { FramedColour } from '../../core/paint/measure/measured-photo.ts';
import {
  type DraftCaution,
  type DraftPatch,
  draftCautions,
  draftPatches,
  type MeasureDrafts,
  type PaintMeasure,
  type PaintPatch,
  proposedDraft,
} from '../../core/paint/measure/paint-measure.ts';
import { ownPaints, withOwnPaint } from '../../core/paint/own-box.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import { forgetStrength } from '../../core/paint/strength-corrections.ts';
import { keptSignal, type SettingStore } from '../kept-signal.ts';
import type { OwnBoxState } from './own-box.ts';
import { createWorkTeller } from './work-teller.ts';

export interface MeasuringPhoto {
  readonly file: Blob;
  readonly preview: ImageBitmap;
  /** Where bare paper was seen. */
  readonly paper: readonly Point[];
}

export interface MeasuredPaint {
  readonly measure: PaintMeasure;
  /** In the order of `measure.expected`. */
  readonly patches: readonly PaintPatch[];
  /** What she should look at again, in sentences: frames that lie badly, a ladder from the wrong end. */
  readonly cautions: readonly DraftCaution[];
}

/** A paint being measured from a photo. Frames and what they hold are kept; the photo is not. */
export interface PaintMeasuring {
  readonly drafts: ReadonlySignal<MeasureDrafts>;
  readonly photo: ReadonlySignal<MeasuringPhoto | null>;
  readonly result: ReadonlySignal<MeasuredPaint | null>;
  /** What is being done, in words; null while nothing is. */
  readonly work: ReadonlySignal<string | null>;
  readonly problem: ReadonlySignal<string | null>;
  open(paintId: string): Promise<void>;
  choosePhoto(file: Blob): Promise<void>;
  findAgain(): Promise<void>;
  /** Takes a row of the frames for the ladder (`rowsOfFrames`). */
  takeRow(row: number): Promise<void>;
  change(draft: readonly DraftPatch[]): void;
  measure(card: PaintCard): Promise<void>;
  /** Puts what was found in the box; false where it could not be kept. */
  keep(card: PaintCard): Promise<boolean>;
}

interface Needs {
  readonly store: SettingStore;
  readonly client: Pick<AnalysisClient, 'openPhoto' | 'measurePatches' | 'fitPaint'>;
  readonly ownBox: Pick<OwnBoxState, 'box' | 'change' | 'problem'>;
}

const isDrafts = (value: unknown): value is MeasureDrafts =>
  typeof value === 'object' &&
  value !== null &&
  Object.values(value).every(
    (list) => Array.isArray(list) && list.every((each) => 'frame' in each && 'is' in each),
  );

export function createPaintMeasuring({ store, client, ownBox }: Needs): PaintMeasuring {
  const kept = keptSignal<MeasureDrafts>(
    store,
    'paint measure',
    (stored, framed) => (isDrafts(stored) ? { ...stored, ...framed } : framed),
    {},
  );
  const { current: drafts, ready } = kept;
  const photo = signal<MeasuringPhoto | null>(null);
  const result = signal<MeasuredPaint | null>(null);
  const { work, problem, run: runWork, stop } = createWorkTeller();
  let paintId = '';

  function put(next: MeasureDrafts): void {
    kept.set(next).catch(() => undefined); // it says so itself
  }

  function letGo(): void {
    photo.value?.preview.close();
    photo.value = null;
    result.value = null;
  }

  /** The colours in her frames, or in those found where there are none yet. */
  async function look(
    signal: AbortSignal,
    { file, preview }: MeasuringPhoto,
  ): Promise<readonly FramedColour[]> {
    const draft = drafts.value[paintId] ?? [];
    const frames = draft.length > 0 ? draft.map(({ frame }) => frame) : null;
    const line = draft.findIndex(({ is }) => is?.kind === 'black');
    const found = await client.measurePatches(signal, file, frames, line < 0 ? null : line);
    photo.value = { file, preview, paper: found.paper };
    return found.patches;
  }

  async function find(signal: AbortSignal, taken: MeasuringPhoto): Promise<void> {
    const isNew = (drafts.value[paintId] ?? []).length === 0;
    const patches = await look(signal, taken);
    if (isNew) put({ ...drafts.value, [paintId]: proposedDraft(patches) });
  }

  return {
    drafts,
    photo,
    result,
    work,
    problem: computed(() => problem.value ?? kept.problem.value),
    async open(id) {
      if (id !== paintId) {
        stop();
        letGo();
      }
      paintId = id;
      await ready;
    },
    choosePhoto: (file) =>
      runWork('Looking for the patches …', async (signal) => {
        const { preview } = await client.openPhoto(signal, file);
        letGo();
        photo.value = { file, preview, paper: [] };
        await find(signal, photo.value);
      }),
    findAgain: () =>
      runWork('Looking for the patches …', async (signal) => {
        const { [paintId]: _, ...others } = drafts.value;
        put(others);
        result.value = null;
        if (photo.value) await find(signal, photo.value);
      }),
    takeRow: (row) =>
      runWork('Naming the steps …', async (signal) => {
        const draft = drafts.value[paintId] ?? [];
        result.value = null;
        if (!photo.value) return;
        const patches = await look(signal, photo.value);
        put({ ...drafts.value, [paintId]: proposedDraft(patches, draft, row) });
      }),
    change(draft) {
      result.value = null;
      problem.value = null;
      put({ ...drafts.value, [paintId]: draft });
    },
    measure: (card) =>
      runWork('Measuring the patches …', async (signal) => {
        const draft = drafts.value[paintId] ?? [];
        if (!photo.value) return;
        const found = await look(signal, photo.value);
        const patches = draftPatches(draft, found);
        const own = ownPaints(ownBox.box.value).filter(({ id }) => id !== card.id);
        const measure = await client.fitPaint(signal, patches, { id: card.id, ci: card.ci }, own);
        result.value = { measure, patches, cautions: draftCautions(draft, found, card.ci) };
      }),
    async keep(card) {
      const found = result.value;
      if (!found) return false;
      const { K, S, sure, why, strength, mostLoad } = found.measure;
      const before = ownPaints(ownBox.box.value).find(({ id }) => id === card.id);
      const { name, ci, properties } = card;
      const base = before ?? {
        id: `own-${crypto.randomUUID()}`,
        name: `my ${name}`,
        ci,
        properties,
      };
      // A photo does not tell how strong a tube is: what she has stays. What scraps said was of the former optics.
      const tube = before?.strength ? {} : { strength, mostLoad };
      await ownBox.change((box) => ({
        ...withOwnPaint(box, { ...base, K, S, ...tube, optics: { from: 'measured', sure, why } }),
        strengthLessons: forgetStrength(box.strengthLessons ?? [], base.id),
      }));
      if (ownBox.problem.value) return false;
      const { [paintId]: _, ...others } = drafts.value;
      put(others);
      letGo();
      return true;
    },
  };
}
