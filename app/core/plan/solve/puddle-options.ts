import {
  type Spectrum,
  spectrumSize,
  weightX,
  weightY,
  weightZ,
  writeLabOfSums,
} from '../../colour/spectrum.ts';
import { drySurface } from '../../colour/surface.ts';
import { mixSizes, tabulatedShares } from '../../limits.ts';
import { combinations } from '../../numeric/combinations.ts';
import type { LastAnswers } from '../../numeric/memo.ts';
import { defaultPaper } from '../../paint/colour-of-washes.ts';
import { escapingOver, mixSpectra, writeLayerSample } from '../../paint/layer.ts';
import { wholeParts } from '../../paint/mix.ts';
import { MixSensitivity } from '../../paint/mix-sensitivity.ts';
import { opticsKey, type Paint } from '../../paint/paint.ts';
import type { Checkpoint } from '../../palette/checkpoint.ts';

// Read once, for a hot loop.
const samples = spectrumSize;
const [toX, toY, toZ] = [weightX, weightY, weightZ];
const seenOver = escapingOver;
const { k2 } = drySurface;

/** Paints mixed in whole parts, and the layers of the mix at `tabulatedShares` of a full coat. */
export interface MixedLayers {
  readonly parts: readonly number[];
  /** Per ml/m2, 36 samples. */
  readonly K: Float64Array;
  readonly S: Float64Array;
  /** As `MixSensitivity`. */
  readonly sensitivity: number;
  /** A full coat, ml/m2. */
  readonly coat: number;
  /** R0 and T of the layer at every tabulated load: loads x 36. */
  readonly back: Float32Array;
  readonly through: Float32Array;
  /** L*, a*, b* of every tabulated load on bare paper: loads x 3. */
  readonly onPaper: Float64Array;
}

/** A mix of some paints of a palette. */
export interface PuddleOption extends MixedLayers {
  /** Indices into the palette. */
  readonly members: readonly number[];
  /** The same as bits, to see quickly whether a family may use it. */
  readonly paintBits: number;
}

/** Writes L*, a*, b* of layer number n over a ground to out[start ..]. */
export function writeLabOfLayer(
  { back, through }: Pick<MixedLayers, 'back' | 'through'>,
  n: number,
  under: Spectrum,
  out: Float64Array,
  start = 0,
): void {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0, offset = n * samples; i < samples; i++, offset++) {
    const light = seenOver(back[offset], through[offset], under[i], k2);
    x += light * toX[i];
    y += light * toY[i];
    z += light * toZ[i];
  }
  writeLabOfSums(x, y, z, drySurface, out, start);
}

function mixedLayers(chosen: readonly Paint[], parts: readonly number[]): MixedLayers {
  const { K, S, coat } = mixSpectra(chosen, parts);
  const back = new Float32Array(tabulatedShares.length * spectrumSize);
  const through = new Float32Array(tabulatedShares.length * spectrumSize);
  const onPaper = new Float64Array(3 * tabulatedShares.length);
  const pair = new Float64Array(2);
  for (const [n, share] of tabulatedShares.entries()) {
    const load = share * coat;
    for (let i = 0; i < spectrumSize; i++) {
      writeLayerSample(K[i] * load, S[i] * load, pair, 0);
      back[n * spectrumSize + i] = pair[0];
      through[n * spectrumSize + i] = pair[1];
    }
    writeLabOfLayer({ back, through }, n, defaultPaper, onPaper, 3 * n);
  }
  const alone = chosen.map((paint) => {
    const perMl = mixSpectra([paint], [1]);
    return [perMl.K, perMl.S] as const;
  });
  const sensitivity = new MixSensitivity().of(K, S, coat, alone, parts);
  return { parts, K, S, sensitivity, coat, back, through, onPaper };
}

/**
 * Every mix of at most three paints of a palette in whole parts of sum at most 8. `known` keeps the mixes of some
 * paints for the next palette that has them.
 */
export async function puddleOptions(
  paints: readonly Paint[],
  checkpoint: Checkpoint,
  known?: LastAnswers<readonly MixedLayers[]>,
): Promise<readonly PuddleOption[]> {
  const options: PuddleOption[] = [];
  for (const size of mixSizes) {
    for (const members of combinations(paints.length, size)) {
      await checkpoint(0);
      const chosen = members.map((member) => paints[member]);
      const key = chosen.map(opticsKey).join();
      const mixes = known?.get(key) ?? wholeParts(size).map((parts) => mixedLayers(chosen, parts));
      known?.keep(key, mixes);
      const paintBits = members.reduce((bits, member) => bits | (1 << member), 0);
      for (const mix of mixes) options.push({ ...mix, members, paintBits });
    }
  }
  return options;
}
