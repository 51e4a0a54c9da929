import type { PaintCard, PaintProperties } from './paint.ts';
import { granulationWords, stainingWords, transparencyWords } from './paint-traits.ts';

type Trait = Exclude<keyof PaintProperties, 'caution'>;

const wordOf: Record<Trait, (properties: PaintProperties) => string | null> = {
  transparency: ({ transparency }) => transparency && transparencyWords[transparency],
  staining: ({ staining }) => (staining === null ? null : stainingWords[staining]),
  granulation: ({ granulation }) => (granulation === null ? null : granulationWords[granulation]),
  lightfastness: ({ lightfastness }) => lightfastness && `lightfastness ${lightfastness}`,
};
const traits = Object.keys(wordOf) as Trait[];

/** The traits of a paint in words: what she says, what is said from memory, and what nobody knows. */
export interface TraitsBySource {
  readonly hers: readonly string[];
  readonly remembered: readonly string[];
  readonly unknown: readonly string[];
}

/** Of a built-in paint all is from memory. */
export function traitsBySource({
  properties,
  fromMemory,
}: Pick<PaintCard, 'properties' | 'fromMemory'>): TraitsBySource {
  const told = traits.filter((trait) => properties[trait] !== null);
  const say = (list: readonly Trait[]): string[] =>
    list.flatMap((trait) => wordOf[trait](properties) ?? []);
  return {
    hers: say(told.filter((trait) => fromMemory && !fromMemory.includes(trait))),
    remembered: say(told.filter((trait) => !fromMemory || fromMemory.includes(trait))),
    unknown: traits.filter((trait) => properties[trait] === null),
  };
}

/** 'Transparent, stains, even, lightfastness I (from memory).' */
export function traitsInWords(card: Pick<PaintCard, 'properties' | 'fromMemory'>): string {
  const { hers, remembered, unknown } = traitsBySource(card);
  const parts = [
    hers.join(', '),
    remembered.length > 0 && `${remembered.join(', ')} (from memory)`,
    ...unknown.map((trait) => `${trait} unknown`),
  ].filter(Boolean);
  const line = parts.join(', ');
  return `${line.charAt(0).toUpperCase()}${line.slice(1)}.`;
}
