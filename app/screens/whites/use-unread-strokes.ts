import { useRef } from 'preact/hooks';
import { type DecisionOf, standingDecisions } from '../../model/standing-decisions.ts';
import type { Decided } from '../common/decide-place.tsx';

/** Her strokes that the reading in sight does not know of yet: they stay drawn until it follows. */
export function useUnreadStrokes({ painting, seen }: Decided): readonly DecisionOf<'white'>[] {
  const read = useRef<{ readonly seen: unknown; readonly ids: ReadonlySet<string> } | null>(null);
  const strokes = standingDecisions(painting.decisions, 'white');
  // A decision stops the reading before it: a new one knows of all that is decided by then.
  if (read.current?.seen !== seen) {
    read.current = { seen, ids: new Set(painting.decisions.map(({ id }) => id)) };
  }
  return strokes.filter(({ id }) => !read.current?.ids.has(id));
}
