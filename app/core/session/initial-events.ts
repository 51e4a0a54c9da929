import type { KeptAir } from '../drying/conditions.ts';
import { amountsIn } from '../paint/former-amounts.ts';
import { unitOf, type WashPlan } from '../plan/plan.ts';
import type { PastSession } from './drying-history.ts';
import type { EventBody } from './session-event.ts';

/** The air and the paper a session begins with. */
export const airEvents = ({ weather, paper }: KeptAir): EventBody[] => [
  { kind: 'weather', weather },
  { kind: 'paper', paper },
];

/**
 * The mixes of a plan as she changed them when she painted it last, counted as this plan counts; left out where that
 * can't be.
 */
export function changedMixEvents(
  past: readonly PastSession[],
  paintingId: string,
  plan: Pick<WashPlan, 'mixes' | 'optics' | 'surface'>,
): EventBody[] {
  const counted = unitOf(plan);
  const last = past
    .filter((each) => each.paintingId === paintingId)
    .sort((a, b) => (a.events[0]?.wallMs ?? 0) - (b.events[0]?.wallMs ?? 0))
    .at(-1);
  return (last?.events ?? []).flatMap(({ what }): EventBody[] => {
    if (what.kind !== 'mix-changed' || !plan.mixes.some(({ id }) => id === what.mix)) return [];
    const amounts = amountsIn(counted.unit, what, plan.optics);
    return amounts ? [{ kind: 'mix-changed', mix: what.mix, ...amounts, ...counted }] : [];
  });
}
