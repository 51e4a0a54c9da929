import { useRef } from 'preact/hooks';
import type { Seen } from '../../state/seen.ts';
import type { AlterDecision } from './change-drawing.tsx';

/** Which of her changes the picture that is seen does not show yet. */
export function useUnreadChanges(
  seen: Seen | null,
  changes: readonly AlterDecision[],
): readonly AlterDecision[] {
  const followed = useRef<{ seen: Seen | null; ids: ReadonlySet<string> }>({
    seen: null,
    ids: new Set(),
  });
  // A reading always is one of all that stood when it came: a newer decision starts it anew.
  if (followed.current.seen !== seen)
    followed.current = { seen, ids: new Set(changes.map(({ id }) => id)) };
  return changes.filter(({ id }) => !followed.current.ids.has(id));
}
