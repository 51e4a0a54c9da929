import type { Lab } from '../../colour/lab.ts';
import type { Technique } from '../../decisions/plan-edit.ts';
import { defaultPaper } from '../../paint/colour-of-washes.ts';
import { mixSpectra } from '../../paint/layer.ts';
import type { Paint } from '../../paint/paint.ts';
import { wetLab } from '../../paint/wet-look.ts';
import type { Slot } from '../../reading/slot.ts';
import type { Mix, Step } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { type DriedSheet, driedSheetOf, labOfSheet, layMix } from '../solve/dried-sheet.ts';

/** Share of the paper that dry brush covers: the tops of its grain (own). */
export const dryBrushCovers = 0.6;

/** The sheet where a mix was first laid, at full and at weaker strength; null where that strength was not used. */
export interface LaidRow {
  readonly full: DriedSheet | null;
  readonly weak: DriedSheet | null;
}

interface LaidSteps {
  /** Dry colour of every slot after every step. */
  readonly after: readonly (readonly Lab[])[];
  /** By id of the mix; mixes that no step lays are missing. */
  readonly rows: ReadonlyMap<string, LaidRow>;
}

/** A mix and the slots it was solved for: steps lay it only there. */
export interface PlacedRow {
  readonly mix: Mix;
  readonly slots: readonly number[];
}

type Laying = Pick<Step, 'kind' | 'slots' | 'mixes' | 'technique'>;

/** Lays mixes over dried sheets; the same mix over the same sheet is computed once. */
class Layers {
  readonly #spectra = new Map<string, ReturnType<typeof mixSpectra>>();
  readonly #laid = new Map<DriedSheet, Map<string, DriedSheet>>();
  readonly #paints: ReadonlyMap<string, Paint>;

  constructor(paints: readonly Paint[]) {
    this.#paints = new Map(paints.map((paint) => [paint.id, paint]));
  }

  #spectraOf({ id, parts }: Mix): ReturnType<typeof mixSpectra> {
    const known = this.#spectra.get(id);
    if (known) return known;
    const there = parts.filter(({ paint }) => this.#paints.has(paint));
    const made = mixSpectra(
      there.map(({ paint }) => this.#paints.get(paint) as Paint),
      there.map((part) => part.parts),
    );
    this.#spectra.set(id, made);
    return made;
  }

  over(dried: DriedSheet, row: Mix, load: number, technique: Technique): DriedSheet {
    const name = `${row.id} ${load} ${technique === 'dry brush'}`;
    const known = this.#laid.get(dried) ?? new Map<string, DriedSheet>();
    this.#laid.set(dried, known);
    const before = known.get(name);
    if (before) return before;
    const whole = layMix(this.#spectraOf(row), load, dried);
    const laid = technique === 'dry brush' ? partly(whole, dried) : whole;
    known.set(name, laid);
    return laid;
  }
}

/** Specks of the dried sheet show between specks of paint: their light adds by area. */
const partly = (paint: DriedSheet, dried: DriedSheet): DriedSheet =>
  driedSheetOf(
    paint.reflectance.map(
      (light, i) => dryBrushCovers * light + (1 - dryBrushCovers) * dried.reflectance[i],
    ),
  );

/**
 * Simulates the plan: for every step and every slot it paints, lays the step's mix over the slot's dried layers, at
 * the weaker strength where the slot's band asks for it. Paints of a mix that are not among `paints` are left out of
 * it. Touches too small for a slot (accents, splatter, lifting) change nothing; unpainted slots stay `paper`.
 */
export function applyStepsToSheet(
  steps: readonly Laying[],
  placed: readonly PlacedRow[],
  slots: readonly Slot[],
  paints: readonly Paint[],
  paper: Lab,
): LaidSteps {
  const layers = new Layers(paints);
  const known = new Map(placed.map((row) => [row.mix.id, row]));
  const bare = driedSheetOf(Float64Array.from(defaultPaper));
  const labs = new Map<DriedSheet, Lab>([[bare, paper]]);
  const labOf = (dried: DriedSheet): Lab => {
    const lab = labs.get(dried) ?? labOfSheet(dried);
    labs.set(dried, lab);
    return lab;
  };
  const rows = new Map<string, LaidRow>();
  let sheet: readonly DriedSheet[] = slots.map(() => bare);
  let colours: readonly Lab[] = slots.map(() => paper);

  const lay = (step: Laying, { mix: row, slots: own }: PlacedRow, next: DriedSheet[]): void => {
    const stepSlots = new Set(step.slots);
    let largest = { full: -1, weak: -1 };
    let laid: LaidRow = { full: null, weak: null };
    for (const i of own) {
      const slot = slots[i];
      const dried = next[i];
      if (!slot || !dried || !stepSlots.has(i)) continue;
      const way = row.weaker?.bands.includes(slot.band) ? 'weak' : 'full';
      const load = way === 'weak' && row.weaker ? row.weaker.load : row.load;
      const over = layers.over(dried, row, load, step.technique);
      next[i] = over;
      if (slot.share <= largest[way]) continue;
      largest = { ...largest, [way]: slot.share };
      laid = { ...laid, [way]: over };
    }
    if (!rows.has(row.id) && (laid.full || laid.weak)) rows.set(row.id, laid);
  };

  const after = steps.map((step) => {
    const laid = step.kind === 'wash' ? step.mixes.flatMap((id) => known.get(id) ?? []) : [];
    const painted = laid.filter(({ mix }) => mix.parts.length > 0 && mix.load > 0);
    if (painted.length > 0) {
      const next = [...sheet];
      for (const row of painted) lay(step, row, next);
      sheet = next;
      colours = sheet.map(labOf);
    }
    return colours;
  });
  return { after, rows };
}

/** Every mix of the solved washes with the slots of its family that its wash paints. */
export const placedRows = ({
  passages,
  slots,
}: Pick<PlanFacts, 'passages' | 'slots'>): PlacedRow[] =>
  passages.flatMap(({ washes }) =>
    washes.flatMap((wash) =>
      wash.mixes.map((mix) => ({
        mix,
        slots: wash.slots.filter((i) => slots[i]?.family === mix.family),
      })),
    ),
  );

/** Replaces each mix's predicted colour by the one over the layers it ends up on; mixes no step lays keep theirs. */
export function updateLaidColours(
  mixes: readonly Mix[],
  rows: ReadonlyMap<string, LaidRow>,
): Mix[] {
  return mixes.map((mix) => {
    const laid = rows.get(mix.id);
    if (!laid) return mix;
    const { full, weak } = laid;
    return {
      ...mix,
      ...(full && {
        expected: labOfSheet(full),
        expectedWet: wetLab(full.reflectance),
      }),
      ...(mix.weaker &&
        weak && {
          weaker: {
            ...mix.weaker,
            expected: labOfSheet(weak),
            expectedWet: wetLab(weak.reflectance),
          },
        }),
    };
  });
}
