import type { Paint } from '../../../app/model/paint.ts';
import type { Checkpoint } from './checkpoint.ts';
import { buildMixLibrary, type MixGroup, type MixLibrary, mixGroup } from './mix-library.ts';
import { largestPalette } from './paints-allowed.ts';

let kept: MixLibrary | undefined;
let groups = new Map<string, MixGroup>();

const sameBox = (one: readonly Paint[], two: readonly Paint[]): boolean =>
  one.length === two.length && one.every((paint, i) => paint === two[i]);

/**
 * The library of the last box asked for is kept: it is the dear part of a search and the same for every
 * picture. Another box takes over the mixes of the paints it has in common with it, and so does a
 * second search those of a first that is not yet through.
 */
export async function keptLibrary(
  paints: readonly Paint[],
  checkpoint: Checkpoint,
): Promise<MixLibrary> {
  if (kept && sameBox(kept.paints, paints)) return kept;
  const keyOf = (members: readonly number[]): string =>
    members.map((n) => `${paints[n]?.id} ${paints[n]?.revision}`).join();
  const built = await buildMixLibrary(paints, checkpoint, (members) => {
    const key = keyOf(members);
    const group = groups.get(key) ?? mixGroup(paints, members);
    groups.set(key, group);
    return { ...group, members };
  });
  // That of a few chosen paints is made in no time and must not push out the box's.
  if (paints.length > largestPalette || !kept) {
    kept = built;
    groups = new Map(built.groups.map((group) => [keyOf(group.members), group]));
  }
  return built;
}
