import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { PaletteOffers } from '../../core/palette/offers/palette-offer.ts';
import { describeFault } from '../../state/describe-fault.ts';
import { type PaletteCalls, requestPalettes } from '../../state/painting/screen-calls.ts';
import type { Studio } from '../../state/painting/studio.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ProgressBar } from '../../ui/controls/progress-bar.tsx';
import styles from './paints-screen.module.css';

interface FoundPalettes {
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
    const controller = new AbortController();
    const rest = (): void => {
      if (!controller.signal.aborted) part.value = null;
    };
    part.value = 0;
    problem.value = null;
    requestPalettes(calls, studio, ownBox.box.value, controller.signal, (reached) => {
      if (!controller.signal.aborted) part.value = reached;
    })
      .then(
        (offers) => {
          if (!controller.signal.aborted) found.value = offers && { planId, offers };
        },
        (fault) => {
          if (!controller.signal.aborted) problem.value = describeFault(fault);
        },
      )
      .finally(rest);
    return () => {
      controller.abort();
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

interface SearchLineProps {
  /** What is being done. */
  said: string;
  /** 0..1. */
  part: number;
  onStop: () => void;
}

/** What is being tried, how far it is, and a way to stop it. */
export function SearchLine({ said, part, onStop }: SearchLineProps) {
  return (
    <div class={styles.line}>
      <p role="status">{said} …</p>
      <ProgressBar class={styles.bar} part={part} />
      <Button onClick={onStop}>Stop</Button>
    </div>
  );
}
