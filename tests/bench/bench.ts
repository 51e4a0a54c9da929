export interface Side {
  readonly name: string;
  /** One whole piece of work, or a promise of it; the result keeps it from being optimised away. */
  readonly run: () => unknown;
}

/** One comparison: the same input to both sides, each as its users would call it. */
export interface Bench {
  readonly name: string;
  /** What one run works on, and where the two sides do not do the same work. */
  readonly work: string;
  readonly ours: Side;
  readonly peer: Side;
  /** How far the two results are apart, in words: a fast wrong answer is none. */
  readonly agreement: string;
}
