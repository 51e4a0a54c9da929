import { readFile } from 'node:fs/promises';
import { spectrumSize } from '../../core/colour/spectrum.ts';
import { largestOptic } from '../../core/limits.ts';
import { type Paint, type PaintProperties, usualCoat } from '../../core/paint/paint.ts';
import { paintBox, pigmentTable } from '../../core/paint/paint-box.ts';
import { traitsOfNames } from '../../core/paint/paint-traits.ts';
import { parseColourIndex } from '../../core/words/paint-entry.ts';
import { CommandError } from './plan-options.ts';

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

const isAmount = (value: unknown): value is number =>
  typeof value === 'number' && value > 0 && value <= largestOptic;

/** What is wrong with K or S; null where nothing is. */
function spectrumFault(name: 'K' | 'S', value: unknown): string | null {
  if (!Array.isArray(value)) return `${name} is missing: ${spectrumSize} numbers, 380 to 730 nm`;
  if (value.length !== spectrumSize)
    return `${name} must be ${spectrumSize} numbers, not ${value.length}`;
  const bad = value.findIndex((each) => typeof each !== 'number' || !Number.isFinite(each));
  if (bad >= 0) return `${name}: number ${bad + 1} is not a finite number`;
  const below = value.findIndex((each) => each < 0);
  if (below >= 0) return `${name}: number ${below + 1} is negative`;
  const beyond = value.findIndex((each) => each > largestOptic);
  if (beyond >= 0) return `${name}: number ${beyond + 1} must be ${largestOptic} at the most`;
  return null;
}

const allowed: Record<keyof PaintProperties, readonly (string | number)[] | 'text'> = {
  transparency: ['T', 'ST', 'SO', 'O'],
  staining: [0, 1, 2],
  granulation: [0, 1, 2],
  lightfastness: 'text',
  caution: 'text',
};
const isTrait = (name: string): name is keyof PaintProperties => Object.hasOwn(allowed, name);

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
function parseOwnPaint(entry: unknown, place: number): Checked {
  if (!isFields(entry)) return { paint: null, faults: [`paint ${place}: must be an object`] };
  const { id, name, ci, K, S, strength = 1, mostLoad, properties } = entry;
  const who = isText(id) ? `paint "${id}"` : `paint ${place}`;
  const names = namesOf(ci);
  const faults = [
    isText(id) ? /[\s,]/.test(id) && 'id must have no blanks or commas' : 'id is missing',
    !isText(name) && 'name is missing',
    typeof names === 'string' && names,
    spectrumFault('K', K),
    spectrumFault('S', S),
    !isAmount(strength) && `strength must be a number above 0, ${largestOptic} at the most`,
    mostLoad !== undefined &&
      !isAmount(mostLoad) &&
      `mostLoad must be a number above 0, ${largestOptic} at the most`,
    ...propertyFaults(properties),
  ].filter((each) => typeof each === 'string');
  if (
    faults.length > 0 ||
    !isText(id) ||
    !isText(name) ||
    typeof names === 'string' ||
    !isAmount(strength)
  )
    return { paint: null, faults: faults.map((fault) => `${who}: ${fault}`) };
  return {
    paint: {
      id,
      revision: 1,
      name: name.trim(),
      ci: names,
      K: K as readonly number[],
      S: S as readonly number[],
      strength,
      mostLoad: isAmount(mostLoad) ? mostLoad : usualCoat * strength,
      properties: { ...traitsOfNames(names, pigmentTable), ...(properties as object | undefined) },
    },
    faults: [],
  };
}

async function jsonOf(file: string): Promise<unknown> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (thrown) {
    const missing = (thrown as NodeJS.ErrnoException).code === 'ENOENT';
    throw new CommandError(
      missing ? `--paints ${file}: there is no such file` : `--paints ${file} can't be read`,
    );
  }
  try {
    return JSON.parse(text.replace(/^\uFEFF/, '')); // some editors put a byte order mark in front
  } catch {
    throw new CommandError(`--paints ${file}: this is not JSON`);
  }
}

const listIn = (json: unknown): readonly unknown[] | null =>
  typeof json === 'object' && json !== null && 'paints' in json && Array.isArray(json.paints)
    ? json.paints
    : null;

/** Paints of a parsed file, and a line for every fault in them. */
export function parseOwnPaints(json: unknown): { paints: Paint[]; faults: string[] } {
  const list = listIn(json);
  if (!list) return { paints: [], faults: ['it must hold an object { "paints": [...] }'] };
  if (list.length === 0) return { paints: [], faults: ['"paints" is empty: give at least one'] };
  const taken = new Set(paintBox.map(({ id }) => id));
  const paints: Paint[] = [];
  const faults: string[] = [];
  list.forEach((entry, i) => {
    const { paint, faults: its } = parseOwnPaint(entry, i + 1);
    faults.push(...its);
    if (!paint) return;
    if (taken.has(paint.id)) {
      const builtIn = paintBox.some(({ id }) => id === paint.id);
      faults.push(
        `paint "${paint.id}": ${builtIn ? 'a built-in paint has this id' : 'this id is there twice'}, give it another`,
      );
    }
    taken.add(paint.id);
    paints.push(paint);
  });
  return { paints, faults };
}

/**
 * Paints with optics of their own from a JSON file. Errors: `CommandError`, one line: the first fault, and how many
 * more there are.
 */
export async function readOwnPaints(file: string): Promise<Paint[]> {
  const { paints, faults } = parseOwnPaints(await jsonOf(file));
  const [first, ...more] = faults;
  if (first === undefined) return paints;
  const others = more.length > 0 ? ` (and ${more.length} more: ${more.join('; ')})` : '';
  throw new CommandError(`--paints ${file}: ${first}${others}`);
}
