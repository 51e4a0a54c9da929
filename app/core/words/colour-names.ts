import type { Lab } from '../colour/lab.ts';

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

/** Warm hues as painters call them once they are dark or dull: a dark yellow looks green, an olive. */
function earthName(angle: number, lightness: number, chroma: number): string | null {
  if (angle < 30 || angle >= 118 || chroma >= 45) return null;
  if (angle >= 90 && lightness < 55) return chroma < 16 ? 'dull olive' : 'olive';
  if (angle >= 98) return null;
  if (lightness < 48) return chroma < 16 ? 'dull brown' : 'brown';
  if (lightness < 78 && chroma >= 20) return angle < 62 ? 'red earth' : 'ochre';
  return null;
}

/** L* from which what is hardly coloured is called white. */
const nearlyWhite = 88;

/** What is nearly grey, or nearly white, by the way it leans: yellow makes a white a cream, a grey a warm one. */
function greyName(angle: number, lightness: number): string {
  const isLight = lightness > nearlyWhite;
  if (isLight && angle >= 60 && angle < 118) return 'cream';
  const leaning = angle < 118 || angle >= 330 ? 'warm' : angle < 175 ? 'greenish' : 'cool';
  return `${leaning} ${isLight ? 'white' : 'grey'}`;
}

/** A colour in a painter's words, by hue and strength: 'dull yellow-green', 'warm grey'. */
export function familyName([lightness, a, b]: Lab): string {
  const chroma = Math.hypot(a, b);
  if (chroma < 3) return lightness > nearlyWhite ? 'white' : lightness < 12 ? 'black' : 'grey';
  const angle = ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
  if (chroma < 9) return greyName(angle, lightness);
  const earth = earthName(angle, lightness, chroma);
  if (earth) return earth;
  if (chroma < 24) return lightness > 75 ? `pale ${hueName(angle)}` : `dull ${hueName(angle)}`;
  return chroma < 55 ? hueName(angle) : `strong ${hueName(angle)}`;
}

/** What tells colours of one name apart, from the least to the most: how strong they are, or how light. */
const tellingApart: readonly (readonly [of: (lab: Lab) => number, words: readonly string[]])[] = [
  [([, a, b]) => Math.hypot(a, b), ['weaker', 'middling', 'stronger']],
  [([lightness]) => lightness, ['darker', 'middling', 'lighter']],
];

/** Names for a whole list: those that would be called the same say what tells them apart most. */
export function familyNames(colours: readonly Lab[]): string[] {
  const names = colours.map(familyName);
  return names.map((name, i) => {
    const alike = colours.filter((_, j) => names[j] === name);
    if (alike.length < 2) return name;
    const spread = (of: (lab: Lab) => number): number =>
      Math.max(...alike.map(of)) - Math.min(...alike.map(of));
    const [strength, light] = tellingApart;
    const [of, words] = spread(light[0]) > spread(strength[0]) ? light : strength;
    const rank = [...alike].sort((x, y) => of(x) - of(y)).indexOf(colours[i]);
    if (alike.length > 3) return `${name} ${rank + 1}`;
    return `${alike.length === 2 ? words[2 * rank] : words[rank]} ${name}`;
  });
}
