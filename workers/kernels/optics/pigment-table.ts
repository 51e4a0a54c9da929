import type { PaintProperties } from '../../../app/model/paint.ts';
import { nothingKnown, type PigmentTraits } from '../../../app/model/pigment-traits.ts';
import { cautionOf } from './caution-of.ts';
import traits from './data/pigment-properties.json';

// The first word counts: 'O (transparent grades T)' is opaque, 'not listed ...' is unknown.
function transparencyOf(text: string): PaintProperties['transparency'] {
  const word = text.split(' ')[0];
  return word === 'T' || word === 'ST' || word === 'SO' || word === 'O' ? word : null;
}

const lightfastnessOf = (text: string): string | null =>
  /not listed|unsure/.test(text) ? null : text;

const threeSteps = (value: number): 0 | 1 | 2 | null =>
  value === 0 || value === 1 || value === 2 ? value : null;

const propertiesOf = (row: (typeof traits.pigments)[number]): PaintProperties => ({
  transparency: transparencyOf(row.transparency),
  staining: threeSteps(row.staining),
  granulation: threeSteps(row.granulation),
  lightfastness: lightfastnessOf(row.astmCategory),
  caution: cautionOf(row.hazard),
});

/** What the trade says of common pigments, from memory (sources in data/pigment-properties.json). */
export const pigmentTable: readonly PigmentTraits[] = traits.pigments.map((row) => ({
  ci: row.ci,
  properties: propertiesOf(row),
}));

/** The properties of a built-in paint: those of its own row, else of its Colour Index name. */
export function builtInProperties(id: string, ci: string): PaintProperties {
  const row =
    traits.pigments.find((pigment) => pigment.optics === id) ??
    traits.pigments.find((pigment) => pigment.ci === ci);
  return row ? propertiesOf(row) : nothingKnown;
}
