/** Counts what touches the glass anywhere on the page, so that one press can be told from a splash. */
export interface TouchesOnGlass {
  readonly count: number;
  /** Calls back whenever another touch comes down; answers how to stop. */
  onAnother(tell: () => void): () => void;
  /** The finger that is down has done its work: the click that follows when it leaves is nobody's. */
  swallowClick(): void;
  leave(): void;
}

export function touchesOnGlass(window: Window): TouchesOnGlass {
  const down = new Set<number>();
  const listeners = new Set<() => void>();
  const leaving = new AbortController();
  let swallowing = false;
  const when = { capture: true, signal: leaving.signal };
  window.addEventListener(
    'pointerdown',
    ({ pointerType, isPrimary, pointerId }) => {
      swallowing = false;
      if (pointerType !== 'touch') return;
      if (isPrimary) down.clear(); // the first of them: an end that was never told is forgotten
      down.add(pointerId);
      if (down.size > 1) for (const tell of listeners) tell();
    },
    when,
  );
  for (const kind of ['pointerup', 'pointercancel'] as const)
    window.addEventListener(kind, ({ pointerId }) => down.delete(pointerId), when);
  // What stands under the finger by then is another button, or a link that leads away.
  window.addEventListener(
    'click',
    (event) => {
      if (!swallowing || event.detail === 0) return;
      swallowing = false;
      event.preventDefault();
      event.stopPropagation();
    },
    when,
  );
  return {
    get count() {
      return down.size;
    },
    onAnother(tell) {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    swallowClick() {
      swallowing = true;
    },
    leave: () => leaving.abort(),
  };
}
