import { readFile } from 'node:fs/promises';
import { paintBox } from '../../../workers/kernels/optics/paint-box.ts';
import type { Paint } from '../../model/paint.ts';
import { CommandError } from './command-error.ts';
import { ownPaintOf } from './own-paint-of.ts';

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
    return JSON.parse(text);
  } catch {
    throw new CommandError(`--paints ${file}: this is not JSON`);
  }
}

const listIn = (json: unknown): readonly unknown[] | null =>
  typeof json === 'object' && json !== null && 'paints' in json && Array.isArray(json.paints)
    ? json.paints
    : null;

/** Paints of a parsed file, and a line for every fault in them. */
export function ownPaintsIn(json: unknown): { paints: Paint[]; faults: string[] } {
  const list = listIn(json);
  if (!list) return { paints: [], faults: ['it must hold an object { "paints": [...] }'] };
  if (list.length === 0) return { paints: [], faults: ['"paints" is empty: give at least one'] };
  const taken = new Set(paintBox.map(({ id }) => id));
  const paints: Paint[] = [];
  const faults: string[] = [];
  list.forEach((entry, i) => {
    const { paint, faults: its } = ownPaintOf(entry, i + 1);
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
  const { paints, faults } = ownPaintsIn(await jsonOf(file));
  const [first, ...more] = faults;
  if (first === undefined) return paints;
  const others = more.length > 0 ? ` (and ${more.length} more: ${more.join('; ')})` : '';
  throw new CommandError(`--paints ${file}: ${first}${others}`);
}
