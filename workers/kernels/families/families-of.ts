import type { Family } from '../../../app/model/reading.ts';
import type { KindTones } from '../shapes/kind-tones.ts';
import { familyOfKind } from '../shapes/kinds.ts';
import { familyNames } from './family-name.ts';

/**
 * The families that have pixels after merging, largest first and numbered from 1 in that order, and
 * which of the map's families each is. `areas`: px after merging, by the map's number.
 */
export function familiesOf(
  areas: ArrayLike<number>,
  tones: KindTones,
): { families: Family[]; was: number[] } {
  const was: number[] = [];
  let pixels = 0;
  for (let family = 0; family < areas.length; family++) {
    pixels += areas[family] as number;
    if (areas[family]) was.push(family);
  }
  was.sort((x, y) => (areas[y] as number) - (areas[x] as number) || x - y);
  const colours = was.map((family) => {
    const mean = tones.meanOf((kind) => familyOfKind(kind) === family);
    if (!mean) throw new RangeError(`Family ${family} came out of nothing`);
    return mean.lab;
  });
  const names = familyNames(colours);
  const families = was.map(
    (family, i): Family => ({
      id: i + 1,
      lab: colours[i] as Family['lab'],
      share: (areas[family] as number) / pixels,
      name: names[i] as string,
    }),
  );
  return { families, was };
}
