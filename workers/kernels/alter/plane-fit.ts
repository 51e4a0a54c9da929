/** A plane through weighted values over the places of a picture, by least squares about their middle. */
export class PlaneFit {
  level = 0;
  across = 0;
  down = 0;
  middle: readonly [x: number, y: number] = [0, 0];
  #weights = 0;
  #x = 0;
  #y = 0;
  #xx = 0;
  #xy = 0;
  #yy = 0;
  #value = 0;
  #xValue = 0;
  #yValue = 0;

  add(x: number, y: number, value: number, weight: number): void {
    this.#weights += weight;
    this.#x += weight * x;
    this.#y += weight * y;
    this.#xx += weight * x * x;
    this.#xy += weight * x * y;
    this.#yy += weight * y * y;
    this.#value += weight * value;
    this.#xValue += weight * x * value;
    this.#yValue += weight * y * value;
  }

  /** Values that lie on one line, or in one place, have no slope to be trusted: their mean is taken. */
  solve(): void {
    const all = this.#weights;
    if (all === 0) return;
    const [x, y, value] = [this.#x / all, this.#y / all, this.#value / all];
    const xx = this.#xx / all - x * x;
    const xy = this.#xy / all - x * y;
    const yy = this.#yy / all - y * y;
    const xv = this.#xValue / all - x * value;
    const yv = this.#yValue / all - y * value;
    const spread = xx * yy - xy * xy;
    this.middle = [x, y];
    this.level = value;
    if (!(spread > 1e-6 * (xx + yy) * (xx + yy)) || xx + yy < 1e-6) return;
    this.across = (yy * xv - xy * yv) / spread;
    this.down = (xx * yv - xy * xv) / spread;
  }

  at(x: number, y: number): number {
    return this.level + this.across * (x - this.middle[0]) + this.down * (y - this.middle[1]);
  }
}
