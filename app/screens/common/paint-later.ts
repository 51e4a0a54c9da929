/** Does it once the next frame has been shown; the answer calls it off. */
export function afterFrame(work: () => void): () => void {
  let later: ReturnType<typeof setTimeout> | undefined;
  const frame = requestAnimationFrame(() => {
    later = setTimeout(work);
  });
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(later);
  };
}

/** Longest wait for a quiet moment, ms. */
const longestMs = 400;

/** Does it when nothing else is to be done, soon in any case; the answer calls it off. */
export function whenIdle(work: () => void): () => void {
  // Not in every browser.
  if (typeof requestIdleCallback === 'undefined') {
    const later = setTimeout(work, longestMs / 2);
    return () => clearTimeout(later);
  }
  const later = requestIdleCallback(work, { timeout: longestMs });
  return () => cancelIdleCallback(later);
}
