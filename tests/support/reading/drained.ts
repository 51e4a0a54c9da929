/** Runs a kernel that hands back control now and then to its end. */
export function drained<T>(pieces: Generator<void, T>): T {
  for (;;) {
    const piece = pieces.next();
    if (piece.done) return piece.value;
  }
}
