/** Loads searched for a single wash: 0.25 to 32 in half octaves, 15 of them. */
export const halfOctaveLoads: readonly number[] = Array.from(
  { length: 15 },
  (_, i) => 0.25 * 2 ** (i / 2),
);
