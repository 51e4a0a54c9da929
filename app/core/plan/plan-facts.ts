import type { Lab } from '../colour/lab.ts';
import type { PassagesChoice } from '../decisions/plan-edit.ts';
import type { DryingModel } from '../drying/estimate-drying.ts';
import type { PaperChoice } from '../drying/paper-choice.ts';
import type { Weather } from '../drying/weather.ts';
import type { Paint } from '../paint/paint.ts';
import type { Family, Reading } from '../reading/reading.ts';
import type { ReserveSummary, Slot } from '../reading/slot.ts';
import { paintsWithoutDust } from '../words/cautions.ts';
import { type ColourName, unnamedColour } from '../words/plan/names.ts';
import type { Mix } from './plan.ts';

/** What one wash finishes. Bands rise, 1 is the lightest. */
export interface WashBands {
  /** 1 is the first wash. */
  readonly wash: number;
  /** Finished by the puddle at its full strength, which also goes over everything darker. */
  readonly full: readonly number[];
  /** Finished by the same puddle thinner; empty unless lighter bands share this wash. */
  readonly weak: readonly number[];
}

export interface SolvedWash extends WashBands {
  readonly mixes: readonly Mix[];
  /** Slots that get paint: indices into the plan's slots. */
  readonly slots: readonly number[];
  /** Their dry colour afterwards, in the same order. */
  readonly after: readonly Lab[];
}

export interface SolvedPassage {
  readonly passage: string;
  readonly washes: readonly SolvedWash[];
}

/** The facts every step is built from. */
export interface PlanFacts {
  readonly reading: Reading;
  /** The reading's slots with targets for this palette. */
  readonly slots: readonly Slot[];
  readonly reserves: ReserveSummary;
  readonly paints: readonly Paint[];
  /** All paints of the palette: one that no mix needs may still run into a wash. Left out: those above. */
  readonly palette?: readonly Paint[];
  readonly passages: readonly SolvedPassage[];
  /** Her order of ground and subject; left out: as proposed. */
  readonly passagesWish?: PassagesChoice;
  readonly weather: Weather;
  readonly paper: PaperChoice;
  /** 'less' where the washes are to dry sooner; left out: the usual. */
  readonly water?: 'less';
  /** Masking fluid lies on the sheet while it is washed: no hair dryer until it is off (R12). */
  readonly noHeat?: boolean;
  /** A drying model that keeps its last answers; left out: every answer is worked out anew. */
  readonly dryingModel?: DryingModel;
}

/** The family's name; 'shapes' where a single paint makes all families one colour. */
export const nameOfFamily = ({ reading, paints }: PlanFacts, id: number): ColourName =>
  paints.length === 1
    ? 'shapes'
    : (reading.families.find((family: Family) => family.id === id)?.name ?? unnamedColour(id));

/** Area of some slots on the sheet, cm2. */
export function areaCm2({ reading, slots }: PlanFacts, indices: readonly number[]): number {
  const share = indices.reduce((all, i) => all + (slots[i]?.share ?? 0), 0);
  return (share * reading.sheet.widthMm * reading.sheet.heightMm) / 100;
}

export const shapeCount = ({ slots }: PlanFacts, indices: readonly number[]): number =>
  indices.reduce((all, i) => all + (slots[i]?.shapes ?? 0), 0);

/** All mixes of a plan, wash by wash. */
export const plannedMixes = ({ passages }: Pick<PlanFacts, 'passages'>): Mix[] =>
  passages.flatMap(({ washes }) => washes.flatMap(({ mixes }) => mixes));

/** Ids of the mixes that contain paint. */
export const usedMixes = (mixes: readonly Mix[]): string[] =>
  mixes.filter((mix) => mix.parts.length > 0).map((mix) => mix.id);

/** The paints some mixes use, each once. */
export function paintsIn({ paints }: PlanFacts, mixes: readonly Mix[]): Paint[] {
  const ids = new Set(mixes.flatMap((mix) => mix.parts.map((part) => part.paint)));
  return paints.filter((paint) => ids.has(paint.id));
}

/** The paints that may lie anywhere on this sheet and must not be scraped or flicked. */
export const paintsNotToScrape = ({
  palette,
  paints,
}: Pick<PlanFacts, 'palette' | 'paints'>): Paint[] => paintsWithoutDust(palette ?? paints);

/** The passage a title names; none where the sheet has only one. */
export const passageNamed = (
  { passages }: PlanFacts,
  passage: string,
): { readonly passage?: string } => (passages.length > 1 ? { passage } : {});
