/**
 * Names as the list has them, by their letters in capitals. N: natural, with a letter for its hue.
 */
const kinds: ReadonlyMap<string, string> = new Map(
  ['PB', 'PBk', 'PBr', 'PG', 'PM', 'PO', 'PR', 'PV', 'PW', 'PY']
    .concat(['N', 'NB', 'NBk', 'NBr', 'NG', 'NO', 'NR', 'NV', 'NW', 'NY'])
    .map((kind) => [kind.toUpperCase(), kind] as const),
);

/** One name, blanks allowed inside: letters, number, perhaps ':n'. */
const oneName = /^([a-z]+)\s*0*([1-9]\d{0,2})(?:\s*:\s*([1-9]))?(?=$|[\s,;+/])/i;
const between = /^[\s,;+/]+/;

const howTheyLook =
  'they are letters and a number, with commas between, as on the tube: PB29, PY150.';

function readName(text: string): { name: string; length: number } | null {
  const found = oneName.exec(text);
  const kind = kinds.get((found?.[1] ?? '').toUpperCase());
  if (!found || !kind) return null;
  const name = `${kind}${found[2]}${found[3] ? `:${found[3]}` : ''}`;
  return { name, length: found[0].length };
}

/**
 * Colour Index generic names as typed, case forgiven, each once: 'pb29, PY 150' gives PB29 and
 * PY150. A sentence for the painter where they can't be read. Names of hues: Colour Index (SDC,
 * AATCC), from memory.
 */
export function parseColourIndex(text: string): readonly string[] | string {
  let rest = text.replace(between, '');
  if (rest.trim() === '')
    return `The Colour Index names are missing: ${howTheyLook} Type at least one.`;
  const names: string[] = [];
  while (rest !== '') {
    const found = readName(rest);
    if (!found) {
      const word = /^[^,;+/]+/.exec(rest)?.[0].trim() ?? rest;
      return `“${word}” is no Colour Index name: ${howTheyLook} Look for it in small print on the label.`;
    }
    if (!names.includes(found.name)) names.push(found.name);
    rest = rest.slice(found.length).replace(between, '');
  }
  return names;
}

/** What a paint of her own still lacks. */
export const noName = 'The paint has no name yet: type what you call it.';
export const noLike =
  'Nothing is known yet of how it looks: pick the built-in paint that comes nearest.';
