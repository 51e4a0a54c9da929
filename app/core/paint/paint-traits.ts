import { joinCautions, noCautionInWords, notKnownHere } from '../words/cautions.ts';
import type { PaintProperties } from './paint.ts';

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
