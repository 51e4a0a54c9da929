import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { PhotoFacts, Pictures, SubjectResult } from '../../../workers/api.ts';
import type { Decision, NewDecision, Painting } from '../../core/decisions/painting.ts';
import type { WashPlan } from '../../core/plan/plan.ts';
import type { MassSizes, MassWash } from '../../core/reading/masses.ts';
import type { ProgressPhase } from '../../core/reading/reading.ts';
import type { WashShapes } from '../../core/reading/shapes/wash-masses.ts';
import type { SubjectStroke } from '../../core/reading/subject/subject.ts';
import type { Crop } from '../../core/reference/reference.ts';
import type { Sheet } from '../../core/reference/sheet.ts';
import type { NewPlan } from '../../storage/plans.ts';
import { describeFault } from '../describe-fault.ts';
import type { OwnAirState } from '../own-air.ts';
import type { OwnBoxState } from '../paints/own-box.ts';
import {
  keptReadingOf,
  type OpenedReading,
  subjectRequest,
  washShapesRequest,
} from './opened-reading.ts';
import { createPaintingKeeper } from './painting-keeper.ts';
import {
  loadKeptPhoto,
  paintsKeyOf,
  planKeyOf,
  planPainting,
  type ReadingNeeds,
  readingKeyOf,
  readPainting,
  refitReference,
  wishesWithPalette,
} from './read-painting.ts';

export interface Work {
  readonly stage: ProgressPhase;
  /** 0..1 of what is being done. */
  readonly part: number;
}

/** The one painting that is open: what was seen, what is planned, what is being worked out. */
export interface Studio {
  readonly painting: ReadonlySignal<Painting | null>;
  /** The reference in colour and in grey, there long before the reading. */
  readonly pictures: ReadonlySignal<Pictures | null>;
  readonly seen: ReadonlySignal<OpenedReading | null>;
  readonly plan: ReadonlySignal<WashPlan | null>;
  readonly work: ReadonlySignal<Work | null>;
  /** A sentence for the painter; null while all is well. */
  readonly problem: ReadonlySignal<string | null>;
  /** True where a reading once brought the app down and waits to be asked for. */
  readonly waits: ReadonlySignal<boolean>;
  /** The plan that stands, with its reading, as it is kept; null before there is one. */
  made(): NewPlan | null;
  open(paintingId: string): Promise<void>;
  /** Stops what is being worked out; opening goes on with it. */
  leave(): void;
  /** Tries once more what went wrong, or what waits. */
  again(): void;
  decide(decision: NewDecision): Promise<void>;
  /** Kept at once; worked out when the study or the plan is opened. */
  note(decision: NewDecision): Promise<void>;
  /** The subject she has drawn round in the picture seen; null without one. Throws when it is aborted. */
  subjectLine(
    signal: AbortSignal,
    strokes: readonly SubjectStroke[],
  ): Promise<SubjectResult | null>;
  /** The shapes of one wash of the picture seen; null while there is none. Throws when it is aborted. */
  washShapes(signal: AbortSignal, wash: MassWash, sizes: MassSizes): Promise<WashShapes | null>;
  /** Kept at once; read again when the study or the plan is opened. */
  setReference(sheet: Sheet, crop: Crop): Promise<void>;
  /** A study becomes a painting: its plan is made. */
  paintIt(): Promise<void>;
  /** The upright photo, small, for the sheet screen; null with `problem` said where it can't be opened. */
  openPhoto(signal: AbortSignal): Promise<PhotoFacts | null>;
}

interface StudioNeeds extends ReadingNeeds {
  readonly ownBox: Pick<OwnBoxState, 'box' | 'ready'>;
  readonly ownAir: Pick<OwnAirState, 'air' | 'ready'>;
  /** A photo that turned out to be none: its painting is taken away, the sentence is said. */
  readonly onBadPhoto: (painting: Painting, sentence: string) => void;
}

function close({ reference, grey }: Pictures): void {
  reference.close();
  grey.close();
}

const gone = 'This painting is not on this device any more. Go back to the paintings.';

export function createStudio(needs: StudioNeeds): Studio {
  const { store, client, guard, ownBox, ownAir, onBadPhoto } = needs;
  const keeper = createPaintingKeeper({ store });
  const { painting, change } = keeper;
  const pictures = signal<Pictures | null>(null);
  const seen = signal<OpenedReading | null>(null);
  const plan = signal<WashPlan | null>(null);
  const work = signal<Work | null>(null);
  const problem = signal<string | null>(null);
  const waits = signal(false);
  let running: AbortController | null = null;
  let seenKey = '';
  let planKey = '';
  let plannedWith = '';
  let asked = '';

  function showPictures(next: Pictures | null): void {
    const before = pictures.value;
    pictures.value = next;
    if (!before) return;
    // A moment later the canvases are painted from the new pictures.
    setTimeout(() => close(before), 1000);
  }

  function show(next: OpenedReading | null, key: string): void {
    seen.value = next;
    seenKey = key;
  }

  const reportWork = (part: number, stage: ProgressPhase): void => {
    work.value = { part, stage };
  };

  async function look(signal: AbortSignal, current: Painting): Promise<void> {
    const key = readingKeyOf(current);
    if (seenKey === key && seen.value) return;
    let unshown: Pictures | null = null;
    const showEarly = (early: Pictures): void => {
      if (seen.value) unshown = early;
      else showPictures(early);
    };
    try {
      const found = await readPainting(signal, current, needs, showEarly, reportWork);
      if (unshown) showPictures(found);
      unshown = null;
      show(found, key);
    } finally {
      if (unshown) close(unshown);
    }
  }

  /** Her box and her air, as kept. */
  const hersReady = Promise.all([ownBox.ready, ownAir.ready]);
  const keyFor = (current: Painting): string =>
    planKeyOf(current, ownBox.box.value, ownAir.air.value);

  async function workOut(signal: AbortSignal, current: Painting): Promise<void> {
    await look(signal, current);
    await hersReady;
    const opened = seen.value;
    const key = keyFor(current);
    if (!opened || current.purpose || (planKey === key && plan.value)) return;
    const box = ownBox.box.value;
    const before = plannedWith === paintsKeyOf(current, box) ? plan.value : null;
    const wishes = wishesWithPalette(current, box, before, ownAir.air.value);
    const wanted = { painting: current, opened, readingKey: seenKey, key, wishes };
    const made = await planPainting(signal, wanted, { store, client, keeper }, reportWork);
    signal.throwIfAborted();
    planKey = key;
    plannedWith = paintsKeyOf(current, ownBox.box.value);
    plan.value = made;
  }

  /** A crop made by what a photo's container says of its size may not fit: it is put right, once. */
  async function workOutFitting(signal: AbortSignal, current: Painting): Promise<void> {
    try {
      await workOut(signal, current);
    } catch (fault) {
      if (!(fault instanceof Error) || fault.name !== 'CropError') throw fault;
      const reference = await refitReference(signal, current, needs);
      await change((before) => ({ ...before, reference }));
      await workOut(signal, { ...current, reference });
    }
  }

  async function refresh(): Promise<void> {
    const current = painting.value;
    if (!current) return;
    running?.abort();
    const mine = new AbortController();
    running = mine;
    work.value = { part: 0, stage: 'opening' };
    problem.value = null;
    waits.value = false;
    try {
      await workOutFitting(mine.signal, current);
    } catch (fault) {
      if (mine.signal.aborted) return;
      const sentence = describeFault(fault);
      const neverRead = current.planIds.length === 0 && !seen.value;
      const bad = fault instanceof Error && fault.name === 'PhotoError' && neverRead;
      if (bad) onBadPhoto(current, sentence);
      else problem.value = sentence;
    } finally {
      if (running === mine) work.value = null;
    }
  }

  async function add(decision: NewDecision): Promise<void> {
    const made = { ...decision, id: crypto.randomUUID(), at: Date.now() } as Decision;
    await change((before) => ({ ...before, decisions: [...before.decisions, made] }));
  }

  async function open(id: string): Promise<void> {
    asked = id;
    if (painting.value?.id === id) {
      await hersReady;
      const planIsOld = planKey !== keyFor(painting.value);
      const unplanned = (!plan.value || planIsOld) && !painting.value.purpose;
      const stale = unplanned || seenKey !== readingKeyOf(painting.value);
      if (stale && !work.value && !waits.value) await refresh();
      return;
    }
    running?.abort();
    show(null, '');
    showPictures(null);
    plan.value = null;
    planKey = '';
    problem.value = null;
    try {
      const opened = await keeper.open(id);
      if (!opened && asked === id) problem.value = gone;
      if (!opened) return;
      await guard.ready;
      // What was read before needs no photo: it does not wait.
      waits.value =
        guard.waits(opened.reference.photoId) &&
        !(await store.keptReading(id, readingKeyOf(opened)));
      if (asked !== id) return;
    } catch (fault) {
      problem.value = describeFault(fault);
      return;
    }
    if (!waits.value) await refresh();
  }

  return {
    painting,
    pictures,
    seen,
    plan,
    work,
    problem: computed(() => problem.value ?? keeper.problem.value),
    waits,
    made() {
      const [made, opened] = [plan.peek(), seen.peek()];
      if (!made || !opened) return null;
      return { plan: made, key: planKey, readingKey: seenKey, kept: keptReadingOf(opened) };
    },
    open,
    leave() {
      running?.abort();
      work.value = null;
    },
    again: () => void refresh(),
    async decide(decision) {
      await add(decision);
      await refresh();
    },
    async note(decision) {
      running?.abort(); // what is being worked out is out of date
      work.value = null;
      await add(decision);
    },
    async subjectLine(signal, strokes) {
      const current = painting.value;
      const opened = seen.value;
      if (!current || !opened) return null;
      return client.subjectLine(signal, subjectRequest(current, opened, strokes));
    },
    async washShapes(signal, wash, sizes) {
      const opened = seen.value;
      return opened && client.washShapes(signal, washShapesRequest(opened, wash, sizes));
    },
    async setReference(sheet, crop) {
      await change((before) => ({ ...before, reference: { ...before.reference, sheet, crop } }));
    },
    async paintIt() {
      await change(({ purpose: _, ...kept }) => kept);
      await refresh();
    },
    async openPhoto(signal) {
      if (!painting.value) return null;
      try {
        return await client.openPhoto(signal, await loadKeptPhoto(store, painting.value));
      } catch (fault) {
        if (!signal.aborted) problem.value = describeFault(fault);
        return null;
      }
    },
  };
}
