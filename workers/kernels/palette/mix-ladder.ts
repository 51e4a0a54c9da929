import { writeLab } from '../optics/lab-of-reflectance.ts';
import { writeLayerBand } from '../optics/layer.ts';
import { surfaceFloor } from '../optics/surface.ts';
import { bandCount, type Spectrum } from '../optics/wavelengths.ts';
import { halfOctaveLoads } from './half-octave-loads.ts';

const back = new Float64Array(bandCount);
const through = new Float64Array(bandCount);
const sheet = new Float64Array(bandCount);
const pair = new Float64Array(2);
const lab = new Float64Array(3);

function begin(K: Spectrum, S: Spectrum, load: number): void {
  for (let i = 0; i < bandCount; i++) {
    writeLayerBand((K[i] as number) * load, (S[i] as number) * load, pair, 0);
    back[i] = pair[0] as number;
    through[i] = pair[1] as number;
  }
}

// A layer on itself (Kubelka 1954): spares the exponentials of every second load but the first two.
function double(): void {
  for (let i = 0; i < bandCount; i++) {
    const r = back[i] as number;
    const t = through[i] as number;
    const passed = (t * t) / Math.max(1 - r * r, 1e-12);
    back[i] = r + passed * r;
    through[i] = passed;
  }
}

function write(paper: Spectrum, out: Float32Array, at: number): void {
  for (let i = 0; i < bandCount; i++) {
    const r = back[i] as number;
    const t = through[i] as number;
    const under = paper[i] as number;
    sheet[i] = r + (t * t * under) / Math.max(1 - r * under, 1e-12);
  }
  writeLab(sheet, surfaceFloor.dry, lab);
  out.set(lab, at);
}

/**
 * Writes the dry Lab of one mix on `paper` at the 15 half-octave loads to out[at ..]: 15 x L*, a*, b*.
 * K and S are per unit load, 36 bands.
 */
export function writeMixLadder(
  K: Spectrum,
  S: Spectrum,
  paper: Spectrum,
  out: Float32Array,
  at: number,
): void {
  for (const start of [0, 1]) {
    begin(K, S, halfOctaveLoads[start] as number);
    for (let step = start; step < halfOctaveLoads.length; step += 2) {
      if (step > start) double();
      write(paper, out, at + 3 * step);
    }
  }
}
