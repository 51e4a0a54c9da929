import { familyNames } from '../../words/colour-names.ts';
import type { Family } from '../reading.ts';
import { type CellTones, familyOfCell } from '../shapes/cells.ts';

/**
 * The families that have pixels after merging, largest first and numbered from 1 in that order, and
 * which of the map's families each is. `areas`: px after merging, by the map's number.
 */
export function listFamilies(
  areas: ArrayLike<number>,
  tones: CellTones,
): { families: Family[]; was: number[] } {
  const was: number[] = [];
  let pixels = 0;
  for (let family = 0; family < areas.length; family++) {
    pixels += areas[family];
    if (areas[family]) was.push(family);
  }
  was.sort((x, y) => areas[y] - areas[x] || x - y);
  const colours = was.map((family) => {
    const mean = tones.meanOf((cell) => familyOfCell(cell) === family);
    if (!mean) throw new RangeError(`Family ${family} came out of nothing`);
    return mean.lab;
  });
  const names = familyNames(colours);
  const families = was.map(
    (family, i): Family => ({
      id: i + 1,
      lab: colours[i],
      share: areas[family] / pixels,
      name: names[i],
    }),
  );
  return { families, was };
}
