/** Runs work that hands back control now and then to its end, without a pause. */
export function runToEnd<T>(pieces: Generator<void, T>): T {
  for (;;) {
    const piece = pieces.next();
    if (piece.done) return piece.value;
  }
}
