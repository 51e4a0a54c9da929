/** Names of worker errors whose message may go to the screen, or that mean no error at all. */
const kept = ['PhotoError', 'WishError', 'AbortError'];

const sentence =
  'The picture could not be worked out. Nothing is lost: try again, or reload the page if it happens twice.';

/** The analysis stopped or broke; the message is a sentence for the painter. */
export class AnalysisError extends Error {
  override readonly name = 'AnalysisError';

  constructor(cause?: unknown) {
    super(sentence, { cause });
  }
}

/** What a caller gets for whatever a worker threw: a named error as it is, anything else in words. */
export function readableError(thrown: unknown): Error {
  if (thrown instanceof Error && kept.includes(thrown.name)) return thrown;
  return new AnalysisError(thrown);
}
