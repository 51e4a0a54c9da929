import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import type { DraftPatch } from '../../core/paint/measure/paint-measure.ts';
import {
  mostOnPage,
  type RefinedPaint,
  squaresOfPage,
} from '../../core/paint/measure/refine-paints.ts';
import { ownPaints, withOwnPaint } from '../../core/paint/own-box.ts';
import { forgetStrength } from '../../core/paint/strength-corrections.ts';
import { keptSignal, type SettingStore } from '../kept-signal.ts';
import type { OwnBoxState } from './own-box.ts';
import type { MeasuringPhoto } from './paint-measuring.ts';
import { createWorkTeller, type WorkTeller } from './work-teller.ts';

/** A page of one-to-one mixes of her paints, by which those she measured are put right together. */
export interface MixPage extends Pick<WorkTeller, 'work'> {
  /** A sentence for the painter; null while all is well. */
  readonly problem: ReadonlySignal<string | null>;
  /** Ids of the paints on it, at most six, in the order they are painted. */
  readonly chosen: ReadonlySignal<readonly string[]>;
  readonly photo: ReadonlySignal<MeasuringPhoto | null>;
  /** Frames in the order of the squares, row by row. */
  readonly frames: ReadonlySignal<readonly DraftPatch[]>;
  readonly result: ReadonlySignal<readonly RefinedPaint[] | null>;
  choose(id: string, isOnIt: boolean): void;
  choosePhoto(file: Blob): Promise<void>;
  place(frames: readonly DraftPatch[]): void;
  measure(): Promise<void>;
  /** Puts what was found in the box, one more revision of each paint; false where it could not be kept. */
  keep(): Promise<boolean>;
}

interface Needs {
  readonly store: SettingStore;
  readonly client: Pick<AnalysisClient, 'openPhoto' | 'measurePatches' | 'refinePaints'>;
  readonly ownBox: Pick<OwnBoxState, 'box' | 'change' | 'problem'>;
}

/** What is kept of a page: a photo can be chosen again. */
interface PageDraft {
  readonly chosen: readonly string[];
  readonly frames: readonly DraftPatch[];
}

const isDraft = (value: unknown): value is PageDraft =>
  typeof value === 'object' &&
  value !== null &&
  'chosen' in value &&
  'frames' in value &&
  Array.isArray(value.chosen) &&
  Array.isArray(value.frames);

export function createMixPage({ store, client, ownBox }: Needs): MixPage {
  const draft = keptSignal<PageDraft>(
    store,
    'mix page',
    (kept, set) => (isDraft(kept) && set.chosen.length === 0 ? kept : set),
    { chosen: [], frames: [] },
  );
  const chosen = computed(() => draft.current.value.chosen);
  const frames = computed(() => draft.current.value.frames);
  const photo = signal<MeasuringPhoto | null>(null);
  const result = signal<readonly RefinedPaint[] | null>(null);
  const { work, problem, run } = createWorkTeller();

  function put(next: Partial<PageDraft>): void {
    draft.set({ ...draft.current.value, ...next }).catch(() => undefined); // it says so itself
  }

  return {
    work,
    problem: computed(() => problem.value ?? draft.problem.value),
    chosen,
    photo,
    frames,
    result,
    choose(id, isOnIt) {
      const others = chosen.value.filter((each) => each !== id);
      if (isOnIt && others.length >= mostOnPage) return;
      put({ chosen: isOnIt ? [...others, id] : others });
      result.value = null;
    },
    choosePhoto: (file) =>
      run('Looking for the squares …', async (signal) => {
        const { preview } = await client.openPhoto(signal, file);
        // Her frames of before a reload stand; another photo is looked at anew.
        const placed = photo.value ? [] : frames.value;
        photo.value?.preview.close();
        result.value = null;
        photo.value = { file, preview, paper: [] };
        const { patches, paper } = await client.measurePatches(signal, file, null, null);
        photo.value = { file, preview, paper };
        if (placed.length === 0) put({ frames: patches.map(({ frame }) => ({ frame, is: null })) });
      }),
    place(placed) {
      put({ frames: placed });
      result.value = null;
    },
    measure: () =>
      run('Measuring the page …', async (signal) => {
        const names = squaresOfPage(chosen.value);
        const placed = frames.value.map(({ frame }) => frame);
        if (!photo.value) return;
        if (placed.length !== names.length) {
          problem.value = `There are ${placed.length} frames for ${names.length} squares. See that each square has one frame, and choose the photo again where one is missing.`;
          return;
        }
        const { file } = photo.value;
        const { patches } = await client.measurePatches(signal, file, placed, null);
        const squares = patches.map(({ lab, evenness }, n) => ({
          lab,
          paints: names[n] ?? [],
          even: evenness === 'even',
        }));
        const own = ownPaints(ownBox.box.value).filter(({ id }) => chosen.value.includes(id));
        result.value = await client.refinePaints(signal, squares, own, chosen.value);
      }),
    async keep() {
      const refined = result.value;
      if (!refined) return false;
      await ownBox.change((before) =>
        refined.reduce((box, { id, told: _, ...optics }) => {
          const paint = ownPaints(box).find((each) => each.id === id);
          if (!paint) return box;
          return {
            ...withOwnPaint(box, { ...paint, ...optics }),
            strengthLessons: forgetStrength(box.strengthLessons ?? [], id),
          };
        }, before),
      );
      if (ownBox.problem.value) return false;
      photo.value?.preview.close();
      photo.value = null;
      put({ frames: [] });
      result.value = null;
      return true;
    },
  };
}
