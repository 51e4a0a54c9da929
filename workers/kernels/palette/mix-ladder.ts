import { defaultPaper } from '../optics/default-paper.ts';
import { weightX, weightY, weightZ, writeLabOfSums } from '../optics/lab-of-reflectance.ts';
import { surfaceFloor } from '../optics/surface.ts';
import { bandCount } from '../optics/wavelengths.ts';
import { halfOctaveLoads } from './half-octave-loads.ts';

// Read once: the loops below are the hottest of all, and some ways to load a file look imports up each time.
const paper = defaultPaper;
const bands = bandCount;
const [toX, toY, toZ] = [weightX, weightY, weightZ];

/** Colours of one mix at all loads, and the work space for it. */
export class MixLadder {
  /** L*, a*, b* at the 15 half-octave loads, dry, on the default paper. */
  readonly lab = new Float64Array(3 * halfOctaveLoads.length);
  readonly #back = new Float64Array(bandCount);
  readonly #through = new Float64Array(bandCount);

  /** K and S are per unit load, 36 bands. Fills `lab`. */
  write(K: Float64Array, S: Float64Array): void {
    for (const start of [0, 1]) {
      this.#begin(K, S, halfOctaveLoads[start] as number);
      for (let step = start; step < halfOctaveLoads.length; step += 2) this.#look(3 * step);
    }
  }

  // The layer of `writeLayerBand`, with its three exponentials made of one.
  #begin(K: Float64Array, S: Float64Array, load: number): void {
    const back = this.#back;
    const through = this.#through;
    for (let i = 0; i < bands; i++) {
      const kx = (K[i] as number) * load;
      const sx = (S[i] as number) * load;
      const w = Math.sqrt(kx * (kx + 2 * sx));
      const fall = Math.exp(-w);
      const twice = fall * fall;
      const shrink = w > 1e-4 ? (1 - twice) / w : 2 - 2 * w;
      const divisor = (kx + sx) * shrink + 1 + twice;
      back[i] = (sx * shrink) / divisor;
      through[i] = (2 * fall) / divisor;
    }
  }

  // Lays the layer on the paper, and then on itself for the load after next (Kubelka 1954).
  #look(at: number): void {
    const back = this.#back;
    const through = this.#through;
    let x = 0;
    let y = 0;
    let z = 0;
    for (let i = 0; i < bands; i++) {
      const r = back[i] as number;
      const under = paper[i] as number;
      const passed = (through[i] as number) ** 2;
      const seen = r + (passed * under) / Math.max(1 - r * under, 1e-12);
      x += seen * (toX[i] as number);
      y += seen * (toY[i] as number);
      z += seen * (toZ[i] as number);
      const twice = passed / Math.max(1 - r * r, 1e-12);
      back[i] = r + twice * r;
      through[i] = twice;
    }
    writeLabOfSums(x, y, z, surfaceFloor.dry, this.lab, at);
  }
}
