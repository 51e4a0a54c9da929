import { batch, computed, type ReadonlySignal, signal } from '@preact/signals';
import type { ComparedSheet } from '../../../workers/api.ts';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import { comparedSteps, type JudgedComparison } from '../../core/compare/comparison.ts';
import { type Corners, isConvex, placesOnSheet } from '../../core/compare/homography.ts';
import type { Step } from '../../core/plan/plan.ts';
import type { ProgressPhase } from '../../core/reading/reading.ts';
import {
  type ComparedNote,
  comparedSheets,
  measuresOf,
} from '../../core/session/compared-sheets.ts';
import { type EventBody, standingEvents } from '../../core/session/session-event.ts';
import { comparingName } from '../../storage/sessions.ts';
import { describeFault } from '../describe-fault.ts';
import { type NamedBlob, readPhotoFile, refusedPhoto } from '../painting/intake.ts';
import { type CompareDraft, draftFrom, draftOf, noDraft } from './compare-draft.ts';
import type { Easel } from './easel.ts';
import type { Keepsakes } from './keepsakes.ts';

/** Her sheet in a photo, beside what was planned for it. */
export interface Comparing {
  readonly draft: ReadonlySignal<CompareDraft>;
  /** The steps that can be compared, and the one that is. */
  readonly steps: ReadonlySignal<readonly Step[]>;
  readonly step: ReadonlySignal<Step | null>;
  /** How far the work is; null while nothing is done. */
  readonly work: ReadonlySignal<{ readonly part: number; readonly stage: ProgressPhase } | null>;
  readonly problem: ReadonlySignal<string | null>;
  /** What was found last; its photo is looked at also where nothing was judged. */
  readonly found: ReadonlySignal<ComparedSheet | null>;
  /** Whether what was found is by the draft as it is now. */
  readonly isCurrent: ReadonlySignal<boolean>;
  /** Corners as they lie: hers, else those found, else a loose guess. */
  readonly corners: ReadonlySignal<Corners>;
  /** Brings back what she told before, and compares it again. */
  open(): Promise<void>;
  take(photo: NamedBlob): Promise<void>;
  change(told: Partial<Omit<CompareDraft, 'photoId'>>): void;
  /** Compares the photo by what she has told. */
  compare(): Promise<void>;
  cancel(): void;
  leave(): void;
}

interface ComparingNeeds {
  readonly client: Pick<AnalysisClient, 'compare'>;
  readonly keepsakes: Pick<Keepsakes, 'photo' | 'keepRecordPhoto' | 'setting' | 'keepSetting'>;
  readonly easel: Pick<Easel, 'desk' | 'session' | 'log' | 'tell'>;
  readonly sessionId: string;
}

/** Where corners are put that were not found: she draws them to theirs. */
const looseCorners: Corners = [
  [0.12, 0.12],
  [0.88, 0.12],
  [0.88, 0.88],
  [0.12, 0.88],
];

const gone = 'This photo is no longer on this device. Take another one.';
const elsewhere =
  'This session goes on in another window, so the comparison is not in the record: take over at the easel here, then compare again.';

/** Looked at again as it stands in the record. */
const isAsBefore = (before: ComparedNote, by: CompareDraft): boolean =>
  JSON.stringify(draftFrom(before)) === JSON.stringify(draftOf(by));

function isSame(before: ComparedNote, { kind: _, ...told }: EventBody): boolean {
  const { event: _event, at: _at, ...said } = before;
  return JSON.stringify(said) === JSON.stringify(told);
}

export function createComparing({
  client,
  keepsakes,
  easel,
  sessionId,
}: ComparingNeeds): Comparing {
  const name = comparingName(sessionId);
  const draft = signal<CompareDraft>(noDraft);
  const work = signal<{ part: number; stage: ProgressPhase } | null>(null);
  const problem = signal<string | null>(null);
  const found = signal<ComparedSheet | null>(null);
  const comparedBy = signal<CompareDraft | null>(null);
  let comparing = new AbortController();

  const steps = computed(() => {
    const desk = easel.desk.value;
    return desk ? comparedSteps(desk.plan) : [];
  });
  const step = computed(() => {
    const { doneKeys } = easel.session.value;
    const all = steps.value;
    const chosen = all.find(({ key }) => key === draft.value.key);
    return chosen ?? all.findLast(({ key }) => doneKeys.includes(key)) ?? all[0] ?? null;
  });

  function keep(next: CompareDraft): void {
    draft.value = next;
    keepsakes.keepSetting(name, next).catch(() => {}); // 'not saved' stands at the top of the easel
  }

  function forget(): void {
    comparing.abort();
    found.value?.photo.close();
    batch(() => {
      found.value = null;
      work.value = null;
    });
  }

  /** A photo that could be judged comes into the record; before that there is only one of them, under a name of its own. */
  async function intoRecord(by: CompareDraft, key: string): Promise<string | null> {
    const photo = by.photoId === name ? await keepsakes.photo(name) : null;
    if (!photo) return by.photoId;
    const photoId = crypto.randomUUID();
    await keepsakes.keepRecordPhoto(sessionId, { ...photo, id: photoId }, key);
    const moved = { ...draft.value, photoId };
    if (comparedBy.value === draft.value) comparedBy.value = moved;
    keep(moved);
    await keepsakes.keepRecordPhoto(name, { ...photo, bytes: new ArrayBuffer(0) }, key);
    return photoId;
  }

  /** The line in the log, unless it already says the same. */
  async function note(by: CompareDraft, key: string, judged: JudgedComparison): Promise<void> {
    const { wetness, bare } = by;
    if (wetness === null || wetness === 'shiny') return;
    const measures = measuresOf(judged, { wetness, bare });
    const photoId = await intoRecord(by, key);
    if (photoId === null) return;
    const before = comparedSheets(easel.log.value).find((each) => each.photoId === photoId);
    const lines = { kind: 'compared', photoId, key, ...measures } as const;
    if (before && (isAsBefore(before, by) || isSame(before, lines))) return;
    const hasLine = standingEvents(easel.log.value).some(
      ({ what }) => what.kind === 'photo' && what.photoId === photoId,
    );
    const count = easel.log.value.length;
    easel.tell(...(hasLine ? [] : [{ kind: 'photo', photoId, key } as const]), lines);
    if (easel.log.value.length === count) problem.value = elsewhere;
  }

  async function compare(): Promise<void> {
    const by = draft.value;
    const desk = easel.desk.value;
    const after = step.value;
    const { photoId, wetness } = by;
    if (!desk || !after || photoId === null || wetness === null) return;
    const corners = by.corners ?? found.value?.comparison.place?.corners;
    comparing.abort();
    comparing = new AbortController();
    const { signal: leaving } = comparing;
    work.value = { part: 0, stage: 'opening' };
    problem.value = null;
    try {
      const photo = await keepsakes.photo(photoId);
      if (leaving.aborted) return;
      if (!photo) throw refusedPhoto(gone);
      const { reading, slotMap, lightnessMap } = desk.seen;
      const compared = await client.compare(
        leaving,
        {
          photo: new Blob([photo.bytes], { type: photo.mime }),
          reading: { ...reading, edges: desk.edges },
          ...{ slotMap, plan: desk.plan, step: after.n, wetness },
          bare: corners ? placesOnSheet(by.bare, corners) : [],
          ...(lightnessMap && { lightnessMap }),
          ...(by.corners && { corners: by.corners }),
        },
        (part, stage) => {
          work.value = { part, stage };
        },
      );
      found.value?.photo.close();
      batch(() => {
        found.value = compared;
        comparedBy.value = by;
      });
      if (compared.comparison.refused === null) await note(by, after.key, compared.comparison);
    } catch (fault) {
      if (!leaving.aborted) problem.value = describeFault(fault);
    } finally {
      if (!leaving.aborted) work.value = null;
    }
  }

  return {
    draft,
    steps,
    step,
    work,
    problem,
    found,
    isCurrent: computed(() => found.value !== null && comparedBy.value === draft.value),
    corners: computed(
      () => draft.value.corners ?? found.value?.comparison.place?.corners ?? looseCorners,
    ),
    async open() {
      draft.value = draftOf(await keepsakes.setting(name).catch(() => null));
      if (draft.value.photoId !== null) await compare();
    },
    async take(file) {
      forget();
      problem.value = null;
      const key = step.value?.key ?? '';
      work.value = { part: 0, stage: 'opening' };
      try {
        const { photo } = await readPhotoFile(file);
        await keepsakes.keepRecordPhoto(name, { ...photo, id: name }, key);
        keep({ ...draft.value, photoId: name, corners: null, bare: [], key });
      } catch (fault) {
        work.value = null;
        problem.value = describeFault(fault);
        return;
      }
      await compare();
    },
    change(told) {
      const corners = told.corners ?? null;
      if (corners && !isConvex(corners)) return;
      keep({ ...draft.value, ...told });
    },
    compare,
    cancel() {
      comparing.abort();
      work.value = null;
    },
    leave: forget,
  };
}
