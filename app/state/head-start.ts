import { effect, type ReadonlySignal } from '@preact/signals';

/** So long she is left alone with the first screen before the worker warms up. */
const headStartMs = 2500;

/**
 * Lets the worker warm up once, for who looks round first: whoever goes straight to a picture is not held up by it.
 * While she paints nothing is read or searched, so that it would only empty the battery: it waits until she leaves the
 * easel. Returns how to give it up.
 */
export function giveHeadStart(isPainting: ReadonlySignal<boolean>, warmUp: () => void): () => void {
  let isWarm = false;
  return effect(() => {
    if (isPainting.value || isWarm) return;
    const timer = setTimeout(() => {
      isWarm = true;
      warmUp();
    }, headStartMs);
    return () => clearTimeout(timer);
  });
}
