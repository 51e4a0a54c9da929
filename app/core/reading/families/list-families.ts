import type { Lab } from '../../colour/lab.ts';
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

// Hue angles in CIE L*a*b*, each name up to its limit in degrees. Common practice, no source: where
// one colour word gives way to the next differs from person to person.
const hues: readonly (readonly [limit: number, name: string])[] = [
  [22, 'cool red'],
  [42, 'warm red'],
  [68, 'orange'],
  [82, 'orange-yellow'],
  [98, 'yellow'],
  [122, 'yellow-green'],
  [160, 'green'],
  [200, 'blue-green'],
  [240, 'greenish blue'],
  [296, 'blue'],
  [312, 'violet-blue'],
  [325, 'violet'],
  [342, 'red-violet'],
  [360, 'cool red'],
];

function hueName(angle: number): string {
  return hues.find(([limit]) => angle < limit)?.[1] ?? 'cool red';
}

/** Warm hues as painters call them once they are dark or dull. */
function earthName(angle: number, lightness: number, chroma: number): string | null {
  if (angle < 30 || angle >= 98 || chroma >= 45) return null;
  if (lightness < 48) return chroma < 16 ? 'dull brown' : 'brown';
  if (lightness < 78 && chroma >= 20) return angle < 62 ? 'red earth' : 'ochre';
  return null;
}

/** A colour in a painter's words, by hue and strength: 'dull yellow-green', 'warm grey'. */
export function familyName([lightness, a, b]: Lab): string {
  const chroma = Math.hypot(a, b);
  if (chroma < 3) return lightness > 92 ? 'white' : lightness < 12 ? 'black' : 'grey';
  const angle = ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
  if (chroma < 9) {
    if (angle >= 95 && angle < 175) return 'greenish grey';
    return angle < 95 || angle >= 330 ? 'warm grey' : 'cool grey';
  }
  const earth = earthName(angle, lightness, chroma);
  if (earth) return earth;
  if (chroma < 24) return lightness > 75 ? `pale ${hueName(angle)}` : `dull ${hueName(angle)}`;
  return chroma < 55 ? hueName(angle) : `strong ${hueName(angle)}`;
}

/** Names for a whole list: of two that would be called the same, the stronger says so. */
export function familyNames(colours: readonly Lab[]): string[] {
  const names = colours.map(familyName);
  return names.map((name, i) => {
    const alike = colours.filter((_, j) => names[j] === name);
    if (alike.length < 2) return name;
    const strength = (lab: Lab): number => Math.hypot(lab[1], lab[2]);
    const ranks = [...alike].sort((x, y) => strength(x) - strength(y));
    const rank = ranks.indexOf(colours[i]);
    if (alike.length > 3) return `${name} ${rank + 1}`;
    const words = alike.length === 2 ? ['weaker', 'stronger'] : ['weaker', 'middling', 'stronger'];
    return `${words[rank]} ${name}`;
  });
}
