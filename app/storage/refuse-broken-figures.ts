import { StorageProblem } from './storage-problem.ts';

/**
 * Throws where anything about to be kept holds a number that is none, or is endless: kept, it would
 * come back as something that looks right. Bytes cannot hold such and are passed over.
 */
export function refuseBrokenFigures(value: unknown, path = 'row'): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value))
      throw new StorageProblem('broken-figure', new RangeError(`${path} is ${value}`));
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  if (value instanceof ArrayBuffer || ArrayBuffer.isView(value)) return;
  for (const [key, inner] of Object.entries(value)) refuseBrokenFigures(inner, `${path}.${key}`);
}
