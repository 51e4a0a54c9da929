import { type ReadonlySignal, signal } from '@preact/signals';
import type { Painting } from '../model/painting.ts';
import type { Sheet } from '../model/sheet.ts';
import type { Store } from '../storage/open-store.ts';
import { type Naming, newPainting } from './new-painting.ts';
import type { NamedBlob } from './photo-of.ts';
import { sentenceOf } from './sentence-of.ts';

/** The way in for a photo: kept on the device before anything is computed from it. */
export interface Intake {
  readonly busy: ReadonlySignal<boolean>;
  /** Why the last photo was not taken; null while all is well. */
  readonly problem: ReadonlySignal<string | null>;
  take(file: NamedBlob): Promise<void>;
  /** Only to be looked at: no plan is made. */
  study(file: NamedBlob): Promise<void>;
  /** Several photos of which she chooses one; all are taken, or none. */
  takeSeveral(files: readonly NamedBlob[]): Promise<void>;
  /** Says why a photo already kept could not be used after all. */
  refuse(sentence: string): void;
  example(): Promise<void>;
  /** Address of the example's picture. */
  readonly examplePicture: string;
}

interface IntakeNeeds {
  readonly store: Store;
  /** The paper used last; null before the first painting. */
  readonly lastSheet: () => Sheet | null;
  readonly onPainting: (painting: Painting) => void;
  readonly onCandidates: () => void;
}

const exampleTitle = 'Seed heads, last light';
const examplePicture = new URL('../demo/seed-heads.jpg', import.meta.url).href;

export function createIntake({ store, lastSheet, onPainting, onCandidates }: IntakeNeeds): Intake {
  const busy = signal(false);
  const problem = signal<string | null>(null);
  let latest = 0;

  /** Runs one way in; what an earlier one still brings counts no more. */
  async function newest(work: (stillNewest: () => boolean) => Promise<void>): Promise<void> {
    const mine = ++latest;
    const stillNewest = (): boolean => mine === latest;
    busy.value = true;
    problem.value = null;
    try {
      await work(stillNewest);
    } catch (fault) {
      if (stillNewest()) problem.value = sentenceOf(fault);
    } finally {
      if (stillNewest()) busy.value = false;
    }
  }

  const takeOne = (file: NamedBlob, how: Naming = {}): Promise<void> =>
    newest(async (stillNewest) => {
      const made = await newPainting(file, lastSheet(), how);
      if (!stillNewest()) return;
      await store.addPainting(made.painting, made.photo);
      if (stillNewest()) onPainting(made.painting);
    });

  return {
    busy,
    problem,
    examplePicture,
    refuse(sentence) {
      problem.value = sentence;
    },
    take: (file) => takeOne(file),
    study: (file) => takeOne(file, { purpose: 'study' }),
    takeSeveral: (files) =>
      newest(async (stillNewest) => {
        const made = [];
        for (const file of files)
          made.push(await newPainting(file, lastSheet(), { purpose: 'candidate' }));
        if (!stillNewest()) return;
        for (const { painting, photo } of made) await store.addPainting(painting, photo);
        onCandidates();
      }),
    async example() {
      const response = await fetch(examplePicture);
      await takeOne(await response.blob(), { title: exampleTitle });
    },
  };
}
