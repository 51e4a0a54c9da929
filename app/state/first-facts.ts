import type { KeptAir } from '../model/drying/kept-air.ts';
import type { PastSession } from '../model/session/drying-history.ts';
import type { EventBody } from '../model/session/session-event.ts';
import type { Mix } from '../model/wash-plan.ts';

/** The air and the paper a session begins with. */
export const airFacts = ({ weather, paper }: KeptAir): EventBody[] => [
  { kind: 'weather', weather },
  { kind: 'paper', paper },
];

/** The mixes of a plan as she changed them when she painted it last. */
export function changedMixes(
  past: readonly PastSession[],
  paintingId: string,
  mixes: readonly Mix[],
): EventBody[] {
  const last = past
    .filter((each) => each.paintingId === paintingId)
    .sort((a, b) => (a.events[0]?.wallMs ?? 0) - (b.events[0]?.wallMs ?? 0))
    .at(-1);
  return (last?.events ?? []).flatMap(({ what }) =>
    what.kind === 'mix-changed' && mixes.some(({ id }) => id === what.mix) ? [what] : [],
  );
}
