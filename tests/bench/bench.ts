import type { OpenCv } from './open-cv.ts';

/** A photograph as bytes, RGBA, opaque. */
export interface PhotoBytes {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8ClampedArray;
}

/** What a bench is given: a photograph, and the peer that the bench command installs for itself. */
export interface BenchSetting {
  readonly photo: PhotoBytes;
  /** Absent where benches are only kept from rotting; a file that wants it says `needsOpenCv`. */
  readonly openCv?: OpenCv;
}

export interface Side {
  readonly name: string;
  /** One whole piece of work, or a promise of it; the result keeps it from being optimised away. */
  readonly run: () => unknown;
}

/**
 * One comparison: the same input to both sides, each as its users would call it. Ours is what the
 * product itself calls, in the way it calls it: a ratio of anything else says nothing of the product.
 */
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

/** What a bench file holds. */
export interface BenchFile {
  readonly benches: (setting: BenchSetting) => readonly Bench[] | Promise<readonly Bench[]>;
  readonly needsOpenCv?: true;
}

/** What `agreement` says where the peer is absent. */
export const notCompared = 'not compared';

/** Share of the pixels of two maps that hold the same, in per cent. */
export function percentAlike(one: Uint8Array, other: Uint8Array): string {
  const alike = one.reduce((count, value, i) => count + (value === other[i] ? 1 : 0), 0);
  return `${((100 * alike) / one.length).toFixed(1)} %`;
}
