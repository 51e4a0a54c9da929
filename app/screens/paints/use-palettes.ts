import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { PaletteOffers } from '../../model/palette-offer.ts';
import type { OwnBoxState } from '../../state/own-box.ts';
import { type PaletteCalls, palettesFor } from '../../state/palettes-for.ts';
import { sentenceOf } from '../../state/sentence-of.ts';
import type { Studio } from '../../state/studio.ts';

export interface FoundPalettes {
  /** The last ones found; those of an earlier plan until the next are there. */
  readonly offers: PaletteOffers | null;
  /** Whether they belong to the plan that is shown. */
  readonly current: boolean;
  /** 0..1 while they are searched for; null at rest. */
  readonly part: number | null;
  /** She has stopped the search. */
  readonly stopped: boolean;
  readonly problem: string | null;
  stop(): void;
  start(): void;
}

/** Searches for other palettes whenever there is a new plan, until she stops it. */
export function usePalettes(
  studio: Studio,
  ownBox: OwnBoxState,
  calls: PaletteCalls,
  /** The plan is older than her last choice. */
  halted: boolean,
): FoundPalettes {
  const found = useSignal<{ readonly planId: string; readonly offers: PaletteOffers } | null>(null);
  const part = useSignal<number | null>(null);
  const stopped = useSignal<string | null>(null);
  const problem = useSignal<string | null>(null);
  const asked = useSignal(0);
  const planId = studio.plan.value?.id ?? null;
  const working = studio.work.value !== null;
  const done = planId === null || working || halted || stopped.value === planId;
  useEffect(() => {
    if (done || found.value?.planId === planId) return;
    const leaving = new AbortController();
    const rest = (): void => {
      if (!leaving.signal.aborted) part.value = null;
    };
    part.value = 0;
    problem.value = null;
    palettesFor(calls, studio, ownBox.box.value, leaving.signal, (now) => {
      if (!leaving.signal.aborted) part.value = now;
    })
      .then(
        (offers) => {
          if (!leaving.signal.aborted) found.value = offers && { planId, offers };
        },
        (fault) => {
          if (!leaving.signal.aborted) problem.value = sentenceOf(fault);
        },
      )
      .finally(rest);
    return () => {
      leaving.abort();
      part.value = null;
    };
  }, [studio, ownBox, calls, planId, done, asked.value]);
  return {
    offers: found.value?.offers ?? null,
    current: found.value !== null && found.value.planId === planId && !working && !halted,
    part: part.value,
    stopped: stopped.value !== null && stopped.value === planId,
    problem: problem.value,
    stop() {
      stopped.value = planId;
    },
    start() {
      stopped.value = null;
      asked.value += 1;
    },
  };
}
