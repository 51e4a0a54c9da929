import type { PaintLayer } from './paint-layer.ts';
import { bandCount } from './wavelengths.ts';

/**
 * Two layers as one, `upper` on `lower`: R12 = R1 + T1^2 R2 / (1 - R1 R2), T12 = T1 T2 / (1 - R1 R2).
 * Both must be the same from either side. Kubelka (1954), J. Opt. Soc. Am. 44, 330-335.
 */
export function stackLayers(upper: PaintLayer, lower: PaintLayer): PaintLayer {
  const back = new Float64Array(bandCount);
  const through = new Float64Array(bandCount);
  for (let i = 0; i < bandCount; i++) {
    const r1 = upper.back[i] as number;
    const t1 = upper.through[i] as number;
    const r2 = lower.back[i] as number;
    const between = Math.max(1 - r1 * r2, 1e-12);
    back[i] = r1 + (t1 * t1 * r2) / between;
    through[i] = (t1 * (lower.through[i] as number)) / between;
  }
  return { back, through };
}
