import type { KeptAir } from '../drying/conditions.ts';
import type { Mix } from '../plan/plan.ts';
import type { PastSession } from './drying-history.ts';
import type { EventBody } from './session-event.ts';

/** The air and the paper a session begins with. */
export const airEvents = ({ weather, paper }: KeptAir): EventBody[] => [
  { kind: 'weather', weather },
  { kind: 'paper', paper },
];

/** The mixes of a plan as she changed them when she painted it last. */
export function changedMixEvents(
  past: readonly PastSession[],
  paintingId: string,
  mixes: readonly Pick<Mix, 'id'>[],
): EventBody[] {
  const last = past
    .filter((each) => each.paintingId === paintingId)
    .sort((a, b) => (a.events[0]?.wallMs ?? 0) - (b.events[0]?.wallMs ?? 0))
    .at(-1);
  return (last?.events ?? []).flatMap(({ what }) =>
    what.kind === 'mix-changed' && mixes.some(({ id }) => id === what.mix) ? [what] : [],
  );
}
