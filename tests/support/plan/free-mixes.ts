import { spectrumSize } from '../../../app/core/colour/spectrum.ts';
import { defaultPaper, defaultPaperLab } from '../../../app/core/paint/colour-of-washes.ts';
import { mixSpectra } from '../../../app/core/paint/layer.ts';
import type { Paint } from '../../../app/core/paint/paint.ts';
import { writeSeenLayer } from '../../../app/core/paint/seen-layer.ts';
import { WantedPaint } from '../../../app/core/plan/runs/wanted-paint.ts';

/** Full coats that lie in the darks of a plan. */
const coats = 1.5;

/**
 * What paints can do at all by the optics of the plan: of every colour (L*, a*, b*; 3 a row) the nearest that any
 * mixture of them, in any amounts, gives in one layer on paper. No plan comes nearer, whatever its washes.
 */
export function nearestFreeMixes(paints: readonly Paint[], colours: readonly number[]): number[] {
  const spectra = paints.map((paint) => mixSpectra([paint], [1]));
  const most = coats * Math.max(...spectra.map(({ coat }) => coat));
  const wanted = new WantedPaint(spectra);
  const paper = { reflectance: Float64Array.from(defaultPaper), lightness: defaultPaperLab[0] };
  const [k, s] = [new Float64Array(spectrumSize), new Float64Array(spectrumSize)];
  const lab = new Float64Array(3);
  const nearest: number[] = [];
  for (let row = 0; row < colours.length; row += 3) {
    const [l, a, b] = colours.slice(row, row + 3) as [number, number, number];
    wanted.solve(paper, [l, a, b], most);
    for (let i = 0; i < spectrumSize; i++) {
      k[i] = spectra.reduce(
        (sum, { K }, p) => sum + (wanted.amounts[p] as number) * (K[i] as number),
        0,
      );
      s[i] = spectra.reduce(
        (sum, { S }, p) => sum + (wanted.amounts[p] as number) * (S[i] as number),
        0,
      );
    }
    writeSeenLayer(k, s, paper.reflectance, lab);
    nearest.push(...lab);
  }
  return nearest;
}
