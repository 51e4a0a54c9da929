import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Reading } from '../../../app/core/reading/reading.ts';

const file = resolve(import.meta.dirname, '../../fixtures/readings/mountain-snow.json');

/** A whole reading kept from before edges were measured, to put edges into. */
export const keptReading: Reading = JSON.parse(readFileSync(file, 'utf8'));
