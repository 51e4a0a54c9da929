import { isSmallWhite, type White, type WhiteWay } from '../../../app/model/whites.ts';
import type { PlanFacts } from './plan-facts.ts';

export type WhitesByWay = Readonly<Record<WhiteWay, readonly White[]>>;

/**
 * The whites by the way they are kept, those left out that these paints make no white of; null where
 * the reading is from before whites were listed.
 */
export function plannedWhites({
  reading,
  slots,
}: Pick<PlanFacts, 'reading' | 'slots'>): WhitesByWay | null {
  if (!reading.whites) return null;
  const kept = reading.whites.filter(({ slot }) => slots[slot]?.reserve);
  const by = (way: WhiteWay): White[] => kept.filter((white) => white.way === way);
  return { round: by('round'), mask: by('mask'), last: by('last') };
}

/** The slots some whites lie in, each once. */
export const slotsOfWhites = (whites: readonly White[]): number[] =>
  [...new Set(whites.map(({ slot }) => slot))].sort((x, y) => x - y);

/** Those that lie in a passage. */
export const whitesIn = (
  { slots }: Pick<PlanFacts, 'slots'>,
  passage: string,
  whites: readonly White[],
): White[] => whites.filter(({ slot }) => slots[slot]?.passage === passage);

/** Whether a passage has whites that a wash must leave out. */
export function hasWhitesToLeave(facts: PlanFacts, passage: string): boolean {
  const { slots } = facts;
  if (!slots.some((slot) => slot.passage === passage && slot.reserve && slot.share > 0)) {
    return false;
  }
  const whites = plannedWhites(facts);
  return !whites || whitesIn(facts, passage, [...whites.round, ...whites.mask]).length > 0;
}

/** 'the one small white', 'the 12 whites': small only where all of them are. */
export function whitesInWords(count: number, allSmall: boolean): string {
  const small = allSmall ? 'small ' : '';
  return count === 1 ? `the one ${small}white` : `the ${count} ${small}whites`;
}

export const allSmall = (whites: readonly White[]): boolean => whites.every(isSmallWhite);
