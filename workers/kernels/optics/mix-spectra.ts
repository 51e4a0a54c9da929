import type { Spectrum } from './wavelengths.ts';
import { bandCount } from './wavelengths.ts';

/** Absorption and scattering per unit load, 36 bands each. */
export interface PaintSpectra {
  readonly K: Spectrum;
  readonly S: Spectrum;
}

/**
 * K and S per unit of total load of paints mixed by whole parts: each adds its share.
 * Duncan (1940), Proc. Phys. Soc. 52, 390-401.
 */
export function mixSpectra(paints: readonly PaintSpectra[], parts: readonly number[]) {
  const sum = parts.reduce((all, part) => all + part, 0);
  const K = new Float64Array(bandCount);
  const S = new Float64Array(bandCount);
  for (const [n, paint] of paints.entries()) {
    const share = (parts[n] ?? 0) / sum;
    if (!(share > 0)) continue;
    for (let i = 0; i < bandCount; i++) {
      K[i] = (K[i] as number) + share * (paint.K[i] as number);
      S[i] = (S[i] as number) + share * (paint.S[i] as number);
    }
  }
  return { K, S };
}
