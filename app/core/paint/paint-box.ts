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
import { nothingKnown, type PigmentTraits, worstProperties } from './paint-traits.ts';

type TraitsRow = (typeof traits.pigments)[number];

/** 'Contains cadmium: poison by mouth ... Check the label.'; null where nothing is said of it. */
function cautionOf({ cautions }: Pick<TraitsRow, 'cautions'>): string | null {
  if (cautions.length === 0) return null;
  const said = cautions.map(({ of, people, water }) => {
    const rinse = water && `; rinse water: ${water}`;
    return `Contains ${of}: ${people}${rinse ?? ''}.`;
  });
  return `${said.join(' ')} Check the label.`;
}

const transparencyOf = (text: string): PaintProperties['transparency'] =>
  text === 'T' || text === 'ST' || text === 'SO' || text === 'O' ? text : null;

const lightfastnessOf = ({ astmCategory }: TraitsRow['lightfastness']): string | null =>
  /not listed/.test(astmCategory) ? null : astmCategory;

const threeSteps = (value: number): 0 | 1 | 2 | null =>
  value === 0 || value === 1 || value === 2 ? value : null;

const propertiesOf = (row: TraitsRow): PaintProperties => ({
  transparency: transparencyOf(row.transparency),
  staining: threeSteps(row.staining),
  granulation: threeSteps(row.granulation),
  lightfastness: lightfastnessOf(row.lightfastness),
  caution: cautionOf(row),
});

/**
 * What the trade says of common pigments, from memory (sources in data/pigment-properties.json).
 */
export const pigmentTable: readonly PigmentTraits[] = traits.pigments.map((row) => ({
  ci: row.ci,
  properties: propertiesOf(row),
}));

/** Names as a painter says them: the table's remarks in brackets stay in the table. */
const nameOf = (name: string): string =>
  name.replace(/\s*\([^)]*\)/g, '').replace(/, (.+)$/, ' $1'); // a comma would part it from the next paint of a list

const traitsById = new Map(traits.pigments.flatMap((row) => row.optics.map((id) => [id, row])));

type OpticsRow = Pick<
  (typeof optics.pigments)[number],
  'id' | 'name' | 'provenance' | 'confidence' | 'strength' | 'mostLoad' | 'K' | 'S'
>;

const paintOf = (row: OpticsRow, ci: readonly string[], properties: PaintProperties): Paint => ({
  id: row.id,
  revision: 2,
  name: nameOf(row.name),
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

/** Tubes that are mixed by their makers, reckoned from the paints they are made of. */
const readyMixed: readonly Paint[] = optics.readyMixed.map((row) => {
  const parts = row.made.map(({ paint }) => measuredOrEstimated.find(({ id }) => id === paint));
  const properties = worstProperties(parts.map((part) => part?.properties ?? nothingKnown));
  const names = row.made.map(({ ci }) => ci);
  return {
    ...paintOf(row, names, properties),
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

/** All that may be chosen from: the built-in paints and her own. */
export const knownPaints = (own: readonly Paint[] = []): readonly Paint[] => [...paintBox, ...own];

/** A paint as the screens show it: its ladder from palest to masstone on the default paper. */
export function paintCard(paint: Paint): PaintCard {
  const { id, name, ci, properties, optics, fromMemory, provenance, confidence, madeOf } = paint;
  const coat = coatOf(paint);
  return {
    id,
    name,
    ci,
    properties,
    ...(optics && { optics }),
    ...(fromMemory && { fromMemory }),
    ...(provenance && { provenance }),
    ...(confidence !== undefined && { confidence }),
    ...(madeOf && { madeOf }),
    ladder: ladderShares.map((share) =>
      colourOfWashes([{ paints: [paint], parts: [1], load: share * coat }]),
    ),
  };
}
