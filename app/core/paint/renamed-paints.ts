/**
 * Built-in paints whose pigment was wrongly named: the id they had, the one they have now. The colours are those of the
 * same tubes; under the first id stands another paint today, or none.
 */
const renamed: ReadonlyMap<string, string> = new Map([
  ['py35-cadmium-yellow', 'hue-cadmium-yellow'],
  ['py175-lemon-yellow', 'hue-lemon-yellow'],
]);

const newIds: ReadonlySet<string> = new Set(renamed.values());

/** Plain stored data by today's ids, wherever the former ones stand in it. */
export function withRenamedPaints(stored: unknown): unknown {
  if (typeof stored === 'string') return renamed.get(stored) ?? stored;
  if (Array.isArray(stored)) return stored.map(withRenamedPaints);
  if (typeof stored !== 'object' || stored === null) return stored;
  return Object.fromEntries(
    Object.entries(stored).map(([key, value]) => [
      renamed.get(key) ?? key,
      withRenamedPaints(value),
    ]),
  );
}

/** A stored paint box by today's ids, with a note of those she ticked under another name. */
export function withRenamedTicks(stored: unknown): unknown {
  const box = withRenamedPaints(stored);
  if (typeof box !== 'object' || box === null || !('owned' in box)) return box;
  const owned: readonly unknown[] = Array.isArray(box.owned) ? box.owned : [];
  const toTell = owned.filter((id) => typeof id === 'string' && newIds.has(id));
  return toTell.length > 0 ? { ...box, renamed: toTell } : box;
}
