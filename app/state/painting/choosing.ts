import { type ReadonlySignal, signal } from '@preact/signals';
import type { Pictures } from '../../../workers/api.ts';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import type { Painting } from '../../core/decisions/painting.ts';
import { choiceSentence } from '../../core/words/reading/study.ts';
import type { Store } from '../../storage/open-store.ts';
import { describeFault } from '../describe-fault.ts';

/** One of the photos she chooses among: its picture in grey and what speaks for or against it. */
export interface Candidate {
  readonly painting: Painting;
  readonly pictures: Pictures | null;
  /** One sentence; null while it is being looked at. */
  readonly sentence: string | null;
}

/** Several photos side by side, before one of them is painted. */
interface Choosing {
  readonly candidates: ReadonlySignal<readonly Candidate[]>;
  readonly problem: ReadonlySignal<string | null>;
  /** Looks at all of them, one after the other. */
  open(): Promise<void>;
  leave(): void;
  /** The one to paint; the others are put away and can be brought back. */
  choose(id: string): Promise<void>;
}

interface ChoosingNeeds {
  readonly store: Store;
  readonly client: AnalysisClient;
  readonly onChosen: (painting: Painting) => void;
}

/** Enough to judge the values; a full reading follows once one is chosen. */
const longSidePx = 600;

export function createChoosing({ store, client, onChosen }: ChoosingNeeds): Choosing {
  const candidates = signal<readonly Candidate[]>([]);
  const problem = signal<string | null>(null);
  let looking = new AbortController();

  function update(id: string, seen: Partial<Candidate>): void {
    candidates.value = candidates.value.map((candidate) =>
      candidate.painting.id === id ? { ...candidate, ...seen } : candidate,
    );
  }

  async function lookAt({ id, reference }: Painting, signal: AbortSignal): Promise<void> {
    const photo = await store.photo(reference.photoId);
    if (!photo) return;
    const { crop, sheet } = reference;
    const blob = new Blob([photo.bytes], { type: photo.mime });
    try {
      const { reading, thumbnail } = await client.read(
        signal,
        { photo: blob, crop, sheet, wishes: {}, longSidePx },
        (pictures) => update(id, { pictures }),
        () => {},
      );
      await store.keepThumbnail(id, thumbnail);
      update(id, { sentence: choiceSentence(reading) });
    } catch (fault) {
      if (!signal.aborted) update(id, { sentence: describeFault(fault) });
    }
  }

  function leave(): void {
    looking.abort();
    for (const { pictures } of candidates.value) {
      pictures?.reference.close();
      pictures?.grey.close();
    }
    candidates.value = [];
  }

  return {
    candidates,
    problem,
    leave,
    async open() {
      leave();
      looking = new AbortController();
      const { signal } = looking;
      problem.value = null;
      try {
        const rows = await store.paintings();
        const found = rows
          .filter(({ painting }) => painting.purpose === 'candidate')
          .sort((one, two) => one.painting.createdAt - two.painting.createdAt); // as she picked them
        if (signal.aborted) return;
        candidates.value = found.map(({ painting }) => ({
          painting,
          pictures: null,
          sentence: null,
        }));
        for (const { painting } of found) if (!signal.aborted) await lookAt(painting, signal);
      } catch (fault) {
        problem.value = describeFault(fault);
      }
    },
    async choose(id) {
      try {
        const chosen = await store.changePainting(id, ({ purpose: _, ...kept }) => kept);
        for (const { painting } of candidates.value)
          if (painting.id !== id) await store.putAway(painting.id);
        onChosen(chosen);
      } catch (fault) {
        problem.value = describeFault(fault);
      }
    },
  };
}
