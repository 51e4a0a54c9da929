import type { OpenCv } from './open-cv.ts';

/** A photograph as bytes, RGBA. */
export interface PhotoBytes {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8ClampedArray;
}

/** What a bench is given: a photograph, and the peer that the bench command installs for itself. */
export interface BenchSetting {
  readonly photo: PhotoBytes;
  /** Absent where benches are only kept from rotting; a bench that needs it says `needsOpenCv`. */
  readonly openCv?: OpenCv;
}

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
  /** Absent without the library it needs. */
  readonly peer?: Side;
  /** How often faster ours is meant to be. */
  readonly aim?: number;
  /** How far the two results are apart, in words: a fast wrong answer is none. */
  readonly agreement: string;
}
