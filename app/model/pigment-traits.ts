import { withoutForm } from './colour-index.ts';
import type { PaintProperties } from './paint.ts';

/** What the trade says of one pigment, from memory. */
export interface PigmentTraits {
  readonly ci: string;
  readonly properties: PaintProperties;
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
  const cautions = [...new Set(all.map(({ caution }) => caution).filter((each) => each !== null))];
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
    caution: cautions.length > 0 ? cautions.join(' ') : null,
  };
}

/** What is remembered of a pigment: under that very name, else of all its forms. */
function traitsOf(name: string, table: readonly PigmentTraits[]): PaintProperties {
  const exact = table.filter(({ ci }) => ci === name);
  const found = exact.length
    ? exact
    : table.filter(({ ci }) => withoutForm(ci) === withoutForm(name));
  return worstProperties(found.map(({ properties }) => properties));
}

/** What is remembered of a paint made of these pigments. */
export const traitsOfNames = (
  names: readonly string[],
  table: readonly PigmentTraits[],
): PaintProperties => worstProperties(names.map((name) => traitsOf(name, table)));
