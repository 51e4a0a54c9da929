import { cautionOf } from '../words/cautions.ts';
import { colourOfWashes } from './colour-of-washes.ts';
import optics from './data/pigment-optics.json';
import traits from './data/pigment-properties.json';
import {
  coatOf,
  ladderShares,
  type Paint,
  type PaintCard,
  type PaintProperties,
  type Provenance,
} from './paint.ts';
import { careOfNames, nothingKnown, type PigmentTraits, worstProperties } from './paint-traits.ts';
import { correctedPaint, type StrengthCorrection } from './strength-corrections.ts';

type TraitsRow = (typeof traits.pigments)[number];

const transparencyOf = (text: string): PaintProperties['transparency'] =>
  text === 'T' || text === 'ST' || text === 'SO' || text === 'O' ? text : null;

/** With its source: 'I (from memory)', 'I (from memory; newer tests)'; null where nothing is said. */
function lightfastnessOf({ astmCategory, astmFrom }: TraitsRow['lightfastness']): string | null {
  if (astmCategory.startsWith('not listed')) return null;
  if (astmFrom === 'published') return astmCategory;
  return astmCategory.includes('(')
    ? astmCategory.replace('(', `(${astmFrom}; `)
    : `${astmCategory} (${astmFrom})`;
}

const threeSteps = (value: number): 0 | 1 | 2 | null =>
  value === 0 || value === 1 || value === 2 ? value : null;

const propertiesOf = (row: TraitsRow): PaintProperties => ({
  transparency: transparencyOf(row.transparency),
  staining: threeSteps(row.staining),
  granulation: threeSteps(row.granulation),
  lightfastness: lightfastnessOf(row.lightfastness),
  caution: cautionOf(row),
});

/** What the trade says of common pigments (sources in data/pigment-properties.json, `columnSources`). */
export const pigmentTable: readonly PigmentTraits[] = [
  ...traits.pigments.map((row) => ({
    ci: row.ci,
    properties: propertiesOf(row),
    metals: row.metals,
  })),
  ...traits.hazardOnly.map((row) => ({
    ci: row.ci,
    properties: { ...nothingKnown, caution: cautionOf(row) },
  })),
];

const traitsById: ReadonlyMap<string, TraitsRow> = new Map(
  traits.pigments.flatMap((row) => row.optics.map((id) => [id, row])),
);

/** Names as a painter says them: the table's remarks in brackets stand apart. */
const nameOf = (name: string): string =>
  name.replace(/\s*\([^)]*\)/g, '').replace(/, (.+)$/, ' $1'); // a comma would part it from the next paint of a list
const isShared = (name: string): boolean =>
  optics.pigments.filter((row) => row.name === name).length > 1;
const remarkOf = (name: string): string => /\(([^)]*)\)/.exec(name)?.[1] ?? '';

/** By what else a painter looks for a built-in paint: the table's remarks, and what its pigment is commonly called. */
const alsoCalled: ReadonlyMap<string, string> = new Map(
  [...optics.pigments, ...optics.readyMixed].map(({ id, name }) => [
    id,
    [remarkOf(name), traitsById.get(id)?.commonName].filter(Boolean).join('; '),
  ]),
);

type OpticsRow = Pick<
  (typeof optics.pigments)[number],
  'id' | 'name' | 'provenance' | 'confidence' | 'strength' | 'mostLoad' | 'K' | 'S'
>;

const paintOf = (row: OpticsRow, ci: readonly string[], properties: PaintProperties): Paint => ({
  id: row.id,
  revision: 2,
  name: isShared(row.name) ? `${nameOf(row.name)} ${ci.join(' ')}` : nameOf(row.name),
  ci,
  K: row.K,
  S: row.S,
  strength: row.strength,
  mostLoad: row.mostLoad,
  provenance: row.provenance as Provenance,
  confidence: row.confidence,
  properties,
});

/** Tubes of one pigment, and mixed tubes whose own washes were measured: of these nobody tells the pigments. */
const measuredOrEstimated: readonly Paint[] = optics.pigments.map((row) => {
  const known = traitsById.get(row.id);
  return paintOf(row, row.ci ? [row.ci] : [], known ? propertiesOf(known) : nothingKnown);
});

/** A pigment of this share of a ready-mixed tube or more decides how much light it lets through (own). */
const decidingShare = 1 / 4;

/** Tubes that are mixed by their makers, reckoned from the paints they are made of. */
const readyMixed: readonly Paint[] = optics.readyMixed.map((row) => {
  const tube = row.made.reduce((sum, { partsByVolume }) => sum + partsByVolume, 0);
  const parts = row.made.map(({ paint, partsByVolume }) => ({
    share: partsByVolume / tube,
    properties: measuredOrEstimated.find(({ id }) => id === paint)?.properties ?? nothingKnown,
  }));
  const worstOf = (list: typeof parts): PaintProperties =>
    worstProperties(list.map(({ properties }) => properties));
  const { transparency } = worstOf(parts.filter(({ share }) => share >= decidingShare));
  const names = row.made.map(({ ci }) => ci);
  return {
    ...paintOf(row, names, { ...worstOf(parts), transparency }),
    madeOf: row.made.map(({ ci, partsByVolume }) => ({ ci, parts: partsByVolume })),
  };
});

/**
 * The built-in paints: optics from the published table (sources in data/pigment-optics.json), properties from
 * common practice (data/pigment-properties.json).
 */
export const paintBox: readonly Paint[] = [...measuredOrEstimated, ...readyMixed];

/** Place of a built-in paint among those boxes hold most often, from 0; -1 for the others. */
export const placeAmongOwned = (id: string): number => optics.mostOwned.paints.indexOf(id);

/** All that may be chosen from: the built-in paints and her own, as strong as her scraps say. */
export const knownPaints = (
  own: readonly Paint[] = [],
  strengths: readonly StrengthCorrection[] = [],
): readonly Paint[] => [...paintBox, ...own].map((paint) => correctedPaint(paint, strengths));

/** A paint as the screens show it: its ladder from palest to masstone on the default paper. */
export function paintCard(paint: Paint): PaintCard {
  const { id, name, ci, properties, optics, fromMemory, provenance, confidence, madeOf } = paint;
  const coat = coatOf(paint);
  const place = placeAmongOwned(id);
  const called = alsoCalled.get(id);
  return {
    id,
    name,
    ci,
    properties,
    care: careOfNames(ci, properties.caution, pigmentTable),
    ...(optics && { optics }),
    ...(fromMemory && { fromMemory }),
    ...(provenance && { provenance }),
    ...(confidence !== undefined && { confidence }),
    ...(madeOf && { madeOf }),
    ...(paint.strength && { strength: paint.strength }),
    ...(called && { alsoCalled: called }),
    ...(place >= 0 && { placeAmongOwned: place }),
    ladder: ladderShares.map((share) =>
      colourOfWashes([{ paints: [paint], parts: [1], load: share * coat }]),
    ),
  };
}
