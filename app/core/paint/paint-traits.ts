import { capitalize, joinWords } from '../words/numbers.ts';
import { joinCautions, noCautionInWords, notKnownHere } from './cautions.ts';
import type { PaintCard, PaintProperties } from './paint.ts';

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

/** A name without its form: PB15 of PB15:3. */
const withoutForm = (name: string): string => name.split(':')[0];

/** What the trade says of one pigment, from memory. */
export interface PigmentTraits {
  readonly ci: string;
  readonly properties: PaintProperties;
  /** What it is made of that asks for care somewhere; left out: none. */
  readonly metals?: readonly string[];
}

export const nothingKnown: PaintProperties = {
  transparency: null,
  staining: null,
  granulation: null,
  lightfastness: null,
  caution: null,
};

const transparencies = ['T', 'ST', 'SO', 'O'] as const;
const steps = [0, 1, 2] as const;

/** The worst there can be counts; else all must be known, and the worst of them counts. */
function worstOf<T>(found: readonly (T | null)[], ladder: readonly T[]): T | null {
  const places = found.map((each) => (each === null ? -1 : ladder.indexOf(each)));
  const worst = Math.max(-1, ...places);
  if (worst < ladder.length - 1 && places.includes(-1)) return null;
  return ladder[worst] ?? null;
}

/** ASTM categories I best to V worst; the remark of the worst stays with it. */
function worstLightfastness(found: readonly (string | null)[]): string | null {
  if (found.includes(null)) return null;
  const category = (text: string): number =>
    ['I', 'II', 'III', 'IV', 'V'].indexOf(/^[IV]+/.exec(text)?.[0] ?? '');
  return found.reduce(
    (worst, each) => (category(each ?? '') > category(worst ?? '') ? each : worst),
    found[0] ?? null,
  );
}

/** The properties of a paint of several pigments: of each the worst; every caution once. */
export function worstProperties(all: readonly PaintProperties[]): PaintProperties {
  if (all.length === 0) return nothingKnown;
  return {
    transparency: worstOf(
      all.map((each) => each.transparency),
      transparencies,
    ),
    staining: worstOf(
      all.map((each) => each.staining),
      steps,
    ),
    granulation: worstOf(
      all.map((each) => each.granulation),
      steps,
    ),
    lightfastness: worstLightfastness(all.map((each) => each.lightfastness)),
    caution: joinCautions(all.flatMap(({ caution }) => caution ?? [])),
  };
}

/** The rows of a pigment: under that very name, else of all its forms. */
function rowsOf(name: string, table: readonly PigmentTraits[]): readonly PigmentTraits[] {
  const exact = table.filter(({ ci }) => ci === name);
  return exact.length ? exact : table.filter(({ ci }) => withoutForm(ci) === withoutForm(name));
}

/** What is remembered of a paint made of these pigments; a pigment nobody knows here is a caution like any other. */
export function traitsOfNames(
  names: readonly string[],
  table: readonly PigmentTraits[],
): PaintProperties {
  const rows = names.map((name) => rowsOf(name, table).map(({ properties }) => properties));
  const all = worstProperties(rows.map(worstProperties));
  if (rows.every(({ length }) => length > 0)) return all;
  return { ...all, caution: joinCautions([all.caution ?? '', notKnownHere]) };
}

/** The caution of a paint of these pigments; where it has none, whether that is known. */
export function careOfNames(
  names: readonly string[],
  caution: string | null,
  table: readonly PigmentTraits[],
): string {
  const rows = names.map((name) => rowsOf(name, table));
  const isKnown = rows.length > 0 && rows.every(({ length }) => length > 0);
  return (
    caution ??
    noCautionInWords(
      isKnown,
      rows.flat().flatMap(({ metals = [] }) => metals),
    )
  );
}

export const transparencyWords = {
  T: 'transparent',
  ST: 'half transparent',
  SO: 'half opaque',
  O: 'opaque',
} as const;
export const stainingWords = ['lifts easily', 'stains a little', 'stains'] as const;
export const granulationWords = ['even', 'granulates a little', 'granulates'] as const;

/** Its ASTM category as the table has it, without where that is from: the box says once how sure such things are. */
const lightfastnessInWords = (category: string): string =>
  `lightfastness ${category.replace(/from memory;? ?/, '').replace(' ()', '')}`;

/** What the trade says of a paint, in a line: 'transparent, stains, even, lightfastness I'. */
export function paintTraits(properties: PaintProperties): string {
  const light = properties.lightfastness;
  return [
    properties.transparency && transparencyWords[properties.transparency],
    properties.staining !== null && stainingWords[properties.staining],
    properties.granulation !== null && granulationWords[properties.granulation],
    light ? lightfastnessInWords(light) : 'lightfastness unknown',
  ]
    .filter(Boolean)
    .join(', ');
}

type Trait = Exclude<keyof PaintProperties, 'caution'>;

const wordOf: Record<Trait, (properties: PaintProperties) => string | null> = {
  transparency: ({ transparency }) => transparency && transparencyWords[transparency],
  staining: ({ staining }) => (staining === null ? null : stainingWords[staining]),
  granulation: ({ granulation }) => (granulation === null ? null : granulationWords[granulation]),
  lightfastness: ({ lightfastness }) => lightfastness && lightfastnessInWords(lightfastness),
};
const traits = Object.keys(wordOf) as Trait[];

/** The traits of a paint in words: what she says, what is commonly given, and what nobody knows. */
interface TraitsBySource {
  readonly hers: readonly string[];
  readonly given: readonly string[];
  readonly unknown: readonly string[];
}

/** Of a built-in paint nothing is hers. */
export function traitsBySource({
  properties,
  fromMemory,
}: Pick<PaintCard, 'properties' | 'fromMemory'>): TraitsBySource {
  const told = traits.filter((trait) => properties[trait] !== null);
  const say = (list: readonly Trait[]): string[] =>
    list.flatMap((trait) => wordOf[trait](properties) ?? []);
  return {
    hers: say(told.filter((trait) => fromMemory && !fromMemory.includes(trait))),
    given: say(told.filter((trait) => !fromMemory || fromMemory.includes(trait))),
    unknown: traits.filter((trait) => properties[trait] === null),
  };
}

/** 'Granulates (yours), transparent, stains, lightfastness I.' */
export function traitsInWords(card: Pick<PaintCard, 'properties' | 'fromMemory'>): string {
  const { hers, given, unknown } = traitsBySource(card);
  const parts = [
    hers.length > 0 && `${joinWords(hers)} (yours)`,
    ...given,
    unknown.length > 0 && `${joinWords(unknown)} unknown`,
  ].filter(Boolean);
  return `${capitalize(parts.join(', '))}.`;
}
