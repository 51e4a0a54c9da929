/** Counts what touches the glass anywhere on the page, so that one press can be told from a splash. */
export interface TouchesOnGlass {
  readonly count: number;
  /** Calls back whenever another touch comes down; answers how to stop. */
  onAnother(tell: () => void): () => void;
  leave(): void;
}

export function touchesOnGlass(window: Window): TouchesOnGlass {
  const down = new Set<number>();
  const listeners = new Set<() => void>();
  const leaving = new AbortController();
  const when = { capture: true, signal: leaving.signal };
  window.addEventListener(
    'pointerdown',
    ({ pointerType, isPrimary, pointerId }) => {
      if (pointerType !== 'touch') return;
      if (isPrimary) down.clear(); // the first of them: an end that was never told is forgotten
      down.add(pointerId);
      if (down.size > 1) for (const tell of listeners) tell();
    },
    when,
  );
  for (const kind of ['pointerup', 'pointercancel'] as const)
    window.addEventListener(kind, ({ pointerId }) => down.delete(pointerId), when);
  return {
    get count() {
      return down.size;
    },
    onAnother(tell) {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    leave: () => leaving.abort(),
  };
}
