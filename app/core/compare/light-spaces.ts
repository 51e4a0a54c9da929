import { solveSquare } from '../numeric/solve.ts';
import { type Light, rowTimes, sensors } from '../paint/measure/camera.ts';

/**
 * Three planes in each of which the light multiplies a picture by a factor of its own: rows from linear sRGB to them,
 * and from them back. Every row of `into` has the sum 1, so that grey is grey.
 */
export interface LightSpace {
  readonly into: readonly number[];
  readonly back: readonly number[];
}

const identity = [1, 0, 0, 0, 1, 0, 0, 0, 1] as const;

/** So much of the way from the camera's sensors to the picture's own primaries. */
function spaceAt(part: number): LightSpace {
  const into = sensors.map((value, n) => value + part * (identity[n] - value));
  const back = new Array<number>(9);
  for (let column = 0; column < 3; column++) {
    const right = Float64Array.from(identity.slice(3 * column, 3 * column + 3));
    solveSquare(Float64Array.from(into), right, 3);
    for (let row = 0; row < 3; row++) back[3 * row + column] = right[row];
  }
  return { into, back };
}

/**
 * A light acts on what the sensors catch where the camera did not know it; what was known and left in a picture lies
 * nearer to what an eye would see of it, whose cones, sharpened, lie nearer to the primaries of sRGB (of 560 washes of
 * the built-in paints under a lamp of 2700 K deep blues are 6 L* too dark by the one and 1.6 too light by the other;
 * own). Which it is the picture tells.
 */
export const lightSpaces: readonly LightSpace[] = [0, 0.25, 0.5, 0.75, 1].map(spaceAt);

/** What lies in the three planes of linear sRGB light. */
export const caughtIn = ({ into }: LightSpace, light: Light): Light => [
  rowTimes(into, 0, light),
  rowTimes(into, 1, light),
  rowTimes(into, 2, light),
];
