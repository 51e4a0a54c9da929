import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

/** Bytes of one of the pictures made to break things. */
export const caseFile = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(resolve(import.meta.dirname, '../../fixtures/cases', name)));
