/** A kind is one band with one family, as a single number for maps: band 1.., family 0..7. */
export const familiesPerBand = 8;
export const kindsAtMost = 8 * familiesPerBand;
export const kindOf = (band: number, family: number): number =>
  (band - 1) * familiesPerBand + family;
export const bandOfKind = (kind: number): number => Math.floor(kind / familiesPerBand) + 1;
export const familyOfKind = (kind: number): number => kind % familiesPerBand;

/** Kind of every pixel. */
export function kindMapOf(bands: Uint8Array, families: Uint8Array): Uint8Array {
  const map = new Uint8Array(bands.length);
  for (let i = 0; i < map.length; i++) map[i] = kindOf(bands[i] as number, families[i] as number);
  return map;
}
