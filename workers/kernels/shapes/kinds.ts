/**
 * A kind is one band with one family in one passage, as a single number for maps: band 0..7, family
 * 0..7, passage 0 or 1. A group is one band in one passage: the band's number, 8 more in passage 1.
 * Band 0 is white by her brush, whatever is there in the picture: it takes part in nothing that is
 * found in the picture.
 */
export const familiesPerBand = 8;
const groupsPerPassage = 8;
export const kindsAtMost = 2 * groupsPerPassage * familiesPerBand;
export const brushedBand = 0;
export const kindOf = (group: number, family: number): number => group * familiesPerBand + family;
export const groupOfKind = (kind: number): number => Math.floor(kind / familiesPerBand);
export const groupOf = (band: number, passage: number): number => band + groupsPerPassage * passage;
export const bandOfGroup = (group: number): number => group % groupsPerPassage;
export const passageOfGroup = (group: number): number => Math.floor(group / groupsPerPassage);
export const bandOfKind = (kind: number): number => bandOfGroup(groupOfKind(kind));
export const passageOfKind = (kind: number): number => passageOfGroup(groupOfKind(kind));
export const familyOfKind = (kind: number): number => kind % familiesPerBand;

/** Kind of every pixel; `passages` holds 0 or 1, all 0 where it is null. */
export function kindMapOf(
  bands: Uint8Array,
  families: Uint8Array,
  passages: Uint8Array | null = null,
): Uint8Array {
  const map = new Uint8Array(bands.length);
  for (let i = 0; i < map.length; i++) {
    const group = groupOf(bands[i] as number, passages ? (passages[i] as number) : 0);
    map[i] = kindOf(group, families[i] as number);
  }
  return map;
}
