import { pigmentTable } from '../../../workers/kernels/optics/pigment-table.ts';
import { bandCount } from '../../../workers/kernels/optics/wavelengths.ts';
import { parseColourIndex } from '../../model/colour-index.ts';
import type { Paint, PaintProperties } from '../../model/paint.ts';
import { traitsOfNames } from '../../model/pigment-traits.ts';

interface Checked {
  /** Null where a fault leaves no paint. */
  readonly paint: Paint | null;
  readonly faults: readonly string[];
}

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isText = (value: unknown): value is string =>
  typeof value === 'string' && value.trim() !== '';

/** What is wrong with K or S; null where nothing is. */
function spectrumFault(name: 'K' | 'S', value: unknown): string | null {
  if (!Array.isArray(value)) return `${name} is missing: ${bandCount} numbers, 380 to 730 nm`;
  if (value.length !== bandCount)
    return `${name} must be ${bandCount} numbers, not ${value.length}`;
  const bad = value.findIndex((each) => typeof each !== 'number' || !Number.isFinite(each));
  if (bad >= 0) return `${name}: number ${bad + 1} is not a finite number`;
  const below = value.findIndex((each) => each < 0);
  if (below >= 0) return `${name}: number ${below + 1} is negative`;
  return null;
}

const allowed: Record<keyof PaintProperties, readonly (string | number)[] | 'text'> = {
  transparency: ['T', 'ST', 'SO', 'O'],
  staining: [0, 1, 2],
  granulation: [0, 1, 2],
  lightfastness: 'text',
  caution: 'text',
};
const isTrait = (name: string): name is keyof PaintProperties => name in allowed;

function propertyFaults(value: unknown): string[] {
  if (value === undefined) return [];
  if (!isFields(value)) return ['properties must be an object'];
  return Object.entries(value).flatMap(([name, each]) => {
    if (!isTrait(name))
      return [`properties: "${name}" is not one of ${Object.keys(allowed).join(', ')}`];
    const may = allowed[name];
    if (each === null) return [];
    if (may === 'text')
      return typeof each === 'string' ? [] : [`properties: ${name} must be a text or null`];
    return may.some((choice) => choice === each)
      ? []
      : [`properties: ${name} must be ${may.join(', ')} or null`];
  });
}

/** The names in `ci`, or what is wrong with them. */
function namesOf(value: unknown): readonly string[] | string {
  if (!Array.isArray(value) || !value.every(isText) || value.length === 0)
    return 'ci must be Colour Index names, as ["PB29"]';
  const parsed = value.map((each) => parseColourIndex(each));
  const wrong = parsed.findIndex((each) => typeof each === 'string');
  if (wrong >= 0) return `ci: "${value[wrong]}" is no Colour Index name, as PB29`;
  return [...new Set(parsed.flat())];
}

/**
 * One entry of the file as a paint, or a line for each fault. Properties left out are those remembered of its
 * pigments. `place` counts from 1 and names an entry without an id.
 */
export function ownPaintOf(entry: unknown, place: number): Checked {
  if (!isFields(entry)) return { paint: null, faults: [`paint ${place}: must be an object`] };
  const { id, name, ci, K, S, properties } = entry;
  const who = isText(id) ? `paint "${id}"` : `paint ${place}`;
  const names = namesOf(ci);
  const faults = [
    isText(id) ? /[\s,]/.test(id) && 'id must have no blanks or commas' : 'id is missing',
    !isText(name) && 'name is missing',
    typeof names === 'string' && names,
    spectrumFault('K', K),
    spectrumFault('S', S),
    ...propertyFaults(properties),
  ].filter((each) => typeof each === 'string');
  if (faults.length > 0 || !isText(id) || !isText(name) || typeof names === 'string')
    return { paint: null, faults: faults.map((fault) => `${who}: ${fault}`) };
  return {
    paint: {
      id,
      revision: 1,
      name: name.trim(),
      ci: names,
      K: K as readonly number[],
      S: S as readonly number[],
      properties: { ...traitsOfNames(names, pigmentTable), ...(properties as object | undefined) },
    },
    faults: [],
  };
}
