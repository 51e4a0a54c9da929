/** Pixels near soft edges: whose colour mixes into them, and how much of it, 1..128 of 256. */
export interface SoftBlend {
  readonly pixels: Uint32Array<ArrayBuffer>;
  readonly partners: Uint8Array<ArrayBuffer>;
  readonly shares: Uint8Array<ArrayBuffer>;
}
