import type { Technique } from '../../../app/core/decisions/plan-edit.ts';
import type { PaperChoice } from '../../../app/core/drying/paper-choice.ts';
import { roomWeather } from '../../../app/core/drying/weather.ts';
import { consistencyOf, usualLoad } from '../../../app/core/paint/consistency.ts';
import { paintBox } from '../../../app/core/paint/paint-box.ts';
import type { Mix, SmallTechnique } from '../../../app/core/plan/plan.ts';
import type { PlanFacts } from '../../../app/core/plan/plan-facts.ts';
import type { StepDraft } from '../../../app/core/plan/steps/step-draft.ts';
import { washStep } from '../../../app/core/plan/steps/wash-step.ts';
import { withHandling } from '../../../app/core/plan/techniques/step-handling.ts';
import type { Edge } from '../../../app/core/reading/edges/edge.ts';
import type { Border } from '../../../app/core/reading/reading.ts';
import type { Slot } from '../../../app/core/reading/slot.ts';
import { keptReading } from '../reading/kept-reading.ts';
import { type Told, told } from './told.ts';

/** A quarter sheet, mm. */
export const sheet = { widthMm: 381, heightMm: 279 };
const sheetMm2 = sheet.widthMm * sheet.heightMm;
/** A paint the trade lifts out again (MacEvoy, B., paint tables: staining under 1.5 of 4). */
export const liftingPaint = 'pg18-viridian';
const colours = ['dull green', 'brown', 'blue', 'ochre'];

export type MadeSlot = Partial<Slot> & { readonly lightness: number };

export const border = (a: number, b: number, edges: Partial<Border> = {}): Border => ({
  a,
  b,
  lengthMm: 200,
  contrast: 20,
  soft: 0.1,
  lost: 0,
  ...edges,
});

export interface MadeWork {
  readonly slots: readonly MadeSlot[];
  readonly borders?: readonly Border[];
  readonly edges?: readonly Edge[];
  /** Slots of each wash, by passage. */
  readonly washes: Readonly<Record<string, readonly (readonly number[])[]>>;
  /** Paint of each family, by id; viridian, which lifts easily, where none is named. */
  readonly paints?: Readonly<Record<number, string>>;
  readonly loads?: Readonly<Record<number, number>>;
  readonly fibre?: PaperChoice['fibre'];
}

const slotOf = ({ lightness, ...slot }: MadeSlot): Slot => ({
  passage: 'sheet',
  band: 2,
  family: 1,
  share: 0.2,
  lab: [lightness, 0, 0],
  target: [lightness, 0, 0],
  reserve: false,
  shapes: 3,
  smallShapes: 0,
  largestMm2: 0.15 * sheetMm2,
  ...slot,
});

/** Facts without a solved plan behind them: every family of a wash has a row of its one paint. */
export function madeFacts(made: MadeWork): PlanFacts {
  const { borders = [], edges = [], paints = {}, loads = {}, fibre = 'cotton' } = made;
  const slots = made.slots.map(slotOf);
  const rowOf = (passage: string, wash: number, family: number): Mix => ({
    id: `${passage}/${wash}/${family}`,
    puddle: String.fromCharCode(64 + family),
    wash,
    passage,
    family,
    parts: [{ paint: paints[family] ?? liftingPaint, parts: 1 }],
    load: loads[family] ?? usualLoad('coffee'),
    consistency: consistencyOf(loads[family] ?? usualLoad('coffee')),
    target: null,
    expected: [50, 0, 0],
    expectedWet: [45, 0, 0],
  });
  const passages = Object.entries(made.washes).map(([passage, washes]) => ({
    passage,
    washes: washes.map((own, i) => ({
      wash: i + 1,
      weak: [],
      full: [...new Set(own.flatMap((n) => slots[n]?.band ?? []))],
      mixes: [...new Set(own.flatMap((n) => slots[n]?.family ?? []))].map((family) =>
        rowOf(passage, i + 1, family),
      ),
      slots: own,
      after: own.map(() => [50, 0, 0] as const),
    })),
  }));
  return {
    reading: {
      ...keptReading,
      raster: { width: 381, height: 279 },
      sheet,
      families: colours.map((name, i) => ({ id: i + 1, lab: [50, 0, 0], share: 0.2, name })),
      slots,
      borders,
      edges,
    },
    slots,
    reserves: keptReading.reserves,
    paints: paintBox.filter(({ id }) =>
      [liftingPaint, 'pbr7-burnt-sienna', ...Object.values(paints)].includes(id),
    ),
    passages,
    weather: roomWeather,
    paper: { gsm: 300, fibre },
  };
}

/** The step of one wash, counted from 1, with all that goes with it. */
export function stepOf(
  facts: PlanFacts,
  wash = 1,
  technique: Technique = 'wet on dry',
  passage = 'sheet',
): Told<StepDraft> {
  const washes = facts.passages.find((one) => one.passage === passage)?.washes ?? [];
  const own = washes[wash - 1];
  if (!own) throw new Error(`no wash ${wash}`);
  return told(
    withHandling(facts, washStep(facts, { passage, wash: own, technique }, washes.length)),
  );
}

export const techniquesOf = (draft: Pick<StepDraft, 'touches'>): SmallTechnique['technique'][] =>
  (draft.touches ?? []).map(({ technique }) => technique);

export const touchOf = (
  draft: Pick<StepDraft, 'touches'>,
  technique: SmallTechnique['technique'],
): SmallTechnique => {
  const found = draft.touches?.find((one) => one.technique === technique);
  if (!found) throw new Error(`no ${technique}: ${techniquesOf(draft).join()}`);
  return found;
};
