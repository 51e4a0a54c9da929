import { type Lab, xyzOfLab } from '../../colour/lab.ts';
import { spectrumSize, weightX, weightY, weightZ } from '../../colour/spectrum.ts';
import { solveSquare } from '../../numeric/solve.ts';

const size = spectrumSize + 3;
const weights = [weightX, weightY, weightZ] as const;
/**
 * Steps of the parameter are shortened to this: near black it overshoots. Where that is not enough
 * (one colour in 20000), again with shorter ones.
 */
const paces = [
  { longestStep: 2, rounds: 60 },
  { longestStep: 0.2, rounds: 600 },
];

/** tanh z mapped to 0..1, sample by sample. */
const reflectanceOf = (z: Float64Array): Float64Array =>
  Float64Array.from(z, (value) => (Math.tanh(value) + 1) / 2);

/** Newton's equations: the slopes' sum at rest, and the three sums of the colour. */
function fillEquations(z: Float64Array, pull: Float64Array, xyz: readonly number[]) {
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  for (let i = 0; i < spectrumSize; i++) {
    const t = Math.tanh(z[i]);
    const bend = (1 - t * t) / 2;
    let force = 0;
    for (const [c, weight] of weights.entries()) {
      const part = weight[i];
      force += part * pull[c];
      matrix[i * size + spectrumSize + c] = bend * part;
      matrix[(spectrumSize + c) * size + i] = bend * part;
      right[spectrumSize + c] = right[spectrumSize + c] - part * ((t + 1) / 2);
    }
    let slope = 0;
    let own = -2 * t * bend * force;
    for (const j of [i - 1, i + 1]) {
      if (j < 0 || j >= spectrumSize) continue;
      slope += z[i] - z[j];
      own += 1;
      matrix[i * size + j] = -1;
    }
    matrix[i * size + i] = own;
    right[i] = -(slope + bend * force);
  }
  for (let c = 0; c < 3; c++) {
    right[spectrumSize + c] = right[spectrumSize + c] + xyz[c];
  }
  return { matrix, right };
}

function solved(xyz: readonly [number, number, number], longestStep: number, rounds: number) {
  const luminance = Math.min(1 - 1e-6, Math.max(1e-6, xyz[1]));
  const z = new Float64Array(spectrumSize).fill(Math.atanh(2 * luminance - 1));
  const pull = new Float64Array(3);
  for (let round = 0; round < rounds; round++) {
    const { matrix, right } = fillEquations(z, pull, xyz);
    if (Math.max(...right.map(Math.abs)) < 1e-9) return reflectanceOf(z);
    if (!solveSquare(matrix, right, size)) return null;
    const longest = Math.max(...right.subarray(0, spectrumSize).map(Math.abs));
    const share = Math.min(1, longestStep / longest);
    for (let i = 0; i < spectrumSize; i++) z[i] = z[i] + share * right[i];
    for (let c = 0; c < 3; c++) {
      pull[c] = pull[c] + share * right[spectrumSize + c];
    }
  }
  return null;
}

/**
 * The smoothest reflectance, 36 samples, each strictly between 0 and 1, that looks like a colour
 * (D65, 2 degree; a surface floor, if any, is part of it): least sum of squared slopes of atanh(2 R
 * - 1), by Newton's method with Lagrange multipliers. Burns, S. A. (2020), Numerical methods for
 * smoothest reflectance reconstruction, Color Res. Appl. 45, 8-21 (there called LHTSS). Throws a
 * RangeError for a colour no surface can have.
 */
export function spectrumFromLab(lab: Lab): Float64Array {
  const xyz = xyzOfLab(lab);
  if (Math.min(...xyz) > 0 && Math.max(...xyz) < 1) {
    for (const { longestStep, rounds } of paces) {
      const found = solved(xyz, longestStep, rounds);
      if (found) return found;
    }
  }
  throw new RangeError(`No surface has the colour ${lab.map((v) => v.toFixed(1)).join(' ')}.`);
}

/** As `spectrumFromLab`, colours beyond what a surface can have brought nearer to grey. */
export function nearestSpectrum([lightness, a, b]: Lab): Float64Array {
  for (let share = 1; share > 0; share -= 0.1) {
    try {
      return spectrumFromLab([lightness, a * share, b * share]);
    } catch (thrown) {
      if (!(thrown instanceof RangeError)) throw thrown;
    }
  }
  return new Float64Array(spectrumSize).fill(0.5);
}
