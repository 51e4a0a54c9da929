import { createDryingModel, type DryingModel } from '../drying/estimate-drying.ts';
import { LastAnswers } from '../numeric/memo.ts';
import { LibraryMemo } from '../palette/library/mix-library.ts';
import type { ChosenPalette } from '../palette/search/search-palette.ts';
import type { SolvedPassage } from './plan-facts.ts';
import type { RunMemory } from './runs/run-washes.ts';
import type { MixedLayers, PuddleOption } from './solve/puddle-options.ts';

/**
 * What earlier plans found out, for whoever plans again and again: a change of the steps, the time or the
 * air asks for no other paints and mixes. It is made by who calls (the worker, the plan command, a test)
 * and only spares work: with a new one every answer is the same.
 */
export interface PlanMemory {
  readonly library: LibraryMemo;
  /** L* of the darkest mix of a box. */
  readonly darkest: LastAnswers<number>;
  readonly palettes: LastAnswers<ChosenPalette>;
  /** Every mix of a palette with its layers: some 10 MB for seven paints. */
  readonly options: LastAnswers<readonly PuddleOption[]>;
  /** The mixes of one to three paints, for every palette that has them: 0.3 MB for three. */
  readonly mixes: LastAnswers<readonly MixedLayers[]>;
  readonly passages: LastAnswers<readonly SolvedPassage[]>;
  /** The same with puddles chosen for how the washes run. */
  readonly running: LastAnswers<readonly SolvedPassage[]>;
  /** How they ran: some 2 MB a plan for the light of every square, 40 kB a mix. */
  readonly runs: RunMemory;
  readonly dryingModel: DryingModel;
}

export const createPlanMemory = (): PlanMemory => ({
  library: new LibraryMemo(),
  darkest: new LastAnswers(8),
  palettes: new LastAnswers(4),
  options: new LastAnswers(4),
  mixes: new LastAnswers(64),
  passages: new LastAnswers(8),
  running: new LastAnswers(8),
  runs: { laid: new LastAnswers(4), amounts: new LastAnswers(96) },
  dryingModel: createDryingModel(),
});
