import { computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { mendedPlan } from '../../core/compare/mended-plan.ts';
import { type SessionEvent, standingEvents } from '../../core/session/session-event.ts';
import type { Desk } from './desk.ts';

export interface RevisedDesk {
  /** As it was laid out, over the plan the session began with. */
  readonly laid: Signal<Desk | null>;
  /** With the advice she took on the way: what everybody sees. */
  readonly desk: ReadonlySignal<Desk | null>;
}

/**
 * The desk whose plan is revised by the advice in the log: a line taken back is a revision taken back. How it is done
 * is fetched only once there is such a line.
 */
export function createRevisedDesk(log: ReadonlySignal<readonly SessionEvent[]>): RevisedDesk {
  const laid = signal<Desk | null>(null);
  const revise = signal<typeof mendedPlan | null>(null);
  // As text, so that another line in the log makes no other desk.
  const taken = computed(() =>
    JSON.stringify(
      standingEvents(log.value).flatMap(({ what }) => (what.kind === 'mended' ? [what] : [])),
    ),
  );
  effect(() => {
    if (taken.value === '[]' || revise.peek()) return;
    import('../../core/compare/mended-plan.ts').then(
      ({ mendedPlan }) => {
        revise.value = mendedPlan;
      },
      () => undefined, // not on the device yet: the plan stays as it was
    );
  });
  const desk = computed(() => {
    const own = laid.value;
    const change = revise.value;
    if (!own || !change || taken.value === '[]') return own;
    return { ...own, plan: change(own.plan, own.seen.reading, JSON.parse(taken.value)) };
  });
  return { laid, desk };
}
