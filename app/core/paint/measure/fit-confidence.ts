import { seenDifference } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { type Spectrum, spectrumSize } from '../../colour/spectrum.ts';
import { solveLinear } from '../../numeric/solve.ts';
import { capitalize, spellCount } from '../../words/numbers.ts';
import type { PaintSpectra } from '../layer.ts';
import type { FitEquations } from './fit-equations.ts';
import { patchModel } from './patch-model.ts';

/** A use the paint may be put to: so much of it, with or without another paint, over a ground. */
export interface Probe {
  readonly amount: number;
  readonly other: PaintSpectra | null;
  readonly otherLoad: number;
  readonly ground: Spectrum;
}

/**
 * How uncertain the paint's colour in that use is after a fit (about CIEDE2000, root mean square).
 * The inverse of the fit's normal equations is the covariance of what was found (Laplace's
 * approximation). `logs`: ln K, then ln S, 72 numbers.
 */
export function expectedError(equations: FitEquations, logs: Float64Array, probe: Probe): number {
  const { amount, other, otherLoad, ground } = probe;
  const own = logs.map((log) => amount * Math.exp(log));
  const depth = (from: number, spectrum: Spectrum | undefined): Float64Array =>
    Float64Array.from(
      { length: spectrumSize },
      (_, i) => own[from + i] + otherLoad * (spectrum?.[i] ?? 0),
    );
  const model = patchModel(depth(0, other?.K), depth(spectrumSize, other?.S), ground);
  const seen = seenDifference(model.lab as unknown as Lab);
  let sum = 0;
  for (let c = 0; c < 3; c++) {
    const slope = new Float64Array(equations.size);
    for (let from = 0; from < 3; from++) {
      const weight = seen[c * 3 + from];
      for (let i = 0; i < 2 * spectrumSize; i++) {
        const by = i < spectrumSize ? model.byK : model.byS;
        const along = by[from * spectrumSize + (i % spectrumSize)];
        slope[i] = slope[i] + weight * along * own[i];
      }
    }
    const solved = Float64Array.from(slope);
    if (!solveLinear(Float64Array.from(equations.matrix), solved, equations.size)) return Infinity;
    for (let i = 0; i < equations.size; i++) {
      sum += slope[i] * solved[i];
    }
  }
  return Math.sqrt(sum);
}

/** What is known about a fit once it is made. */
interface FitFacts {
  /** Loads of the steps, ascending. */
  readonly loads: readonly number[];
  /**
   * The thinnest step's distance from the bare paper over the furthest step's: near 1 all are
   * strong.
   */
  readonly thinnestShare: number;
  /** Expected CIEDE2000 of its mixes. */
  readonly mixError: number;
  /** Mean CIEDE2000 between patches and fit. */
  readonly misfit: number;
  /** Whether there was a step over black or a mix with a known paint. */
  readonly hidingSeen: boolean;
  readonly isWhite: boolean;
}

/**
 * The fit counts as half sure where mixes are uncertain by this CIEDE2000, clearly seen side by
 * side (own).
 */
const halfSureError = 4.5;
/**
 * If even the thinnest step lies at this share of the strongest one's distance from paper, hardly
 * any paper shines through (own).
 */
const heavyShare = 0.85;
/** Steps that fit worse than this (CIEDE2000) were mixed up, shone, or dried unevenly (own). */
const poorMisfit = 5;

/** The sentence on how sure a measured paint is, with what would help. */
export function howSure(facts: FitFacts): { readonly sure: number; readonly why: string } {
  const { loads, thinnestShare, mixError, misfit, hidingSeen, isWhite } = facts;
  const open = Math.hypot(mixError, 0.7 * misfit);
  const even = 1 / (1 + (open / halfSureError) ** 2);
  if (isWhite && !hidingSeen) {
    return {
      sure: Math.min(even, 0.15),
      why: 'A white on white paper shows next to nothing. Paint its steps across a black line as well, and measure again.',
    };
  }
  if (thinnestShare > heavyShare) {
    return {
      sure: Math.min(even, 0.3),
      why: 'Only strong steps: how far it colours, and whether it hides what is under it or lets it shine through, can not be told apart. Add thinner steps, each twice as thin, until the paper shines through; a step over a black line or a half and half mix with a paint you know helps too.',
    };
  }
  if (misfit > poorMisfit) {
    return {
      sure: Math.min(even, 0.4),
      why: 'The steps do not agree with each other. See that each frame lies on its own patch and carries the right name; a patch that shines or is still damp misleads.',
    };
  }
  if (loads.length < 4) {
    return {
      sure: Math.min(even, 0.6),
      why: `With only ${spellCount(loads.length)} steps mixes may come out a little different. Five, each twice as thin, would tell more.`,
    };
  }
  if (mixError > halfSureError && !hidingSeen) {
    return {
      sure: even,
      why: 'By itself it will come out close. How it mixes is less sure: a step over a black line, or a half and half mix with a paint you know, would tell.',
    };
  }
  return {
    sure: even,
    why: `${capitalize(spellCount(loads.length))} steps that agree: alone and in mixes it should come out close.`,
  };
}
