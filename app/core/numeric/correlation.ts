/** Pearson's correlation of pairs that are given one after the other, -1..1; 0 where one of the two does not vary. */
export class Correlation {
  count = 0;
  #x = 0;
  #y = 0;
  #xx = 0;
  #yy = 0;
  #xy = 0;

  add(x: number, y: number): void {
    this.count++;
    this.#x += x;
    this.#y += y;
    this.#xx += x * x;
    this.#yy += y * y;
    this.#xy += x * y;
  }

  value(): number {
    const n = this.count;
    const spread = (this.#xx - (this.#x * this.#x) / n) * (this.#yy - (this.#y * this.#y) / n);
    return spread > 0 ? (this.#xy - (this.#x * this.#y) / n) / Math.sqrt(spread) : 0;
  }
}
