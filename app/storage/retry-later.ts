/** What could not be kept is tried again by itself after so long, ms (own). */
const usualMs = 3000;

/** Answers how to ask for another try; asked for again before it came, it comes once. */
export function createRetry(tryAgain: () => void, afterMs = usualMs): () => void {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  return () => {
    clearTimeout(waiting);
    waiting = setTimeout(tryAgain, afterMs);
  };
}
