// Lightness along the normals of a contour, averaged along it.
import type { ContourLine } from './contour-line.ts';
import { levelRow, type PyramidLevel } from './lightness-pyramid.ts';

/** Samples of a profile; the contour lies between the two in the middle. */
export const samples = 32;
/** Where the contour lies, in samples. */
export const middle = (samples - 1) / 2;
/** How many places to either side are averaged: about 5 px. */
const alongEachWay = 6;
/** Places whose direction differs by more than 45 degrees are round a corner. */
const sameDirection = Math.SQRT1_2;

/** Profiles of one contour after another; the finest level's rows are kept and shared. */
export class EdgeProfile {
  readonly values = new Float64Array(samples);
  readonly #pyramid: readonly PyramidLevel[];
  #line: ContourLine | undefined;
  #rows = new Float32Array(0);

  constructor(pyramid: readonly PyramidLevel[]) {
    this.#pyramid = pyramid;
  }

  /** Takes up a contour. */
  look(line: ContourLine): void {
    this.#line = line;
    if (this.#rows.length < line.count * samples) {
      this.#rows = new Float32Array(2 * line.count * samples);
    }
    for (let i = 0; i < line.count; i++) this.#row(line, i, 0, i * samples);
  }

  #row(line: ContourLine, i: number, level: number, at: number): void {
    const plane = this.#pyramid[level] as PyramidLevel;
    const { scale } = plane;
    const stepX = (line.normalX[i] as number) * scale;
    const stepY = (line.normalY[i] as number) * scale;
    const from = {
      x: (line.x[i] as number) - middle * stepX,
      y: (line.y[i] as number) - middle * stepY,
    };
    levelRow(plane, from, { x: stepX, y: stepY }, this.#rows, at, samples);
  }

  /** Fills `values` with the mean profile about place i, from slot a to slot b. */
  fill(i: number, level: number): void {
    const line = this.#line;
    if (!line) throw new RangeError('No contour was taken up');
    const { values } = this;
    values.fill(0);
    const spacing = 1 << level;
    let count = 0;
    for (let n = -alongEachWay; n <= alongEachWay; n++) {
      let j = i + n * spacing;
      if (line.closed) j = ((j % line.count) + line.count) % line.count;
      else if (j < 0 || j >= line.count) continue;
      const along =
        (line.normalX[j] as number) * (line.normalX[i] as number) +
        (line.normalY[j] as number) * (line.normalY[i] as number);
      if (along < sameDirection) continue;
      let at = j * samples;
      if (level > 0) {
        at = line.count * samples;
        if (this.#rows.length < at + samples) this.#grow(at + samples);
        this.#row(line, j, level, at);
      }
      for (let k = 0; k < samples; k++) {
        values[k] = (values[k] as number) + (this.#rows[at + k] as number);
      }
      count++;
    }
    for (let k = 0; k < samples; k++) values[k] = (values[k] as number) / count;
  }

  #grow(length: number): void {
    const larger = new Float32Array(length);
    larger.set(this.#rows);
    this.#rows = larger;
  }
}
