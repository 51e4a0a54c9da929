// spectral.js ships no types: what the test of K/S takes from it.
declare module 'spectral.js' {
  export class Color {
    /** 38 reflectances, 0..1 */
    constructor(reflectances: readonly number[]);
    /** K/S of each */
    get KS(): number[];
  }
}
