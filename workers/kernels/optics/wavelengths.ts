/** Every spectrum here has 36 bands: 380, 390 ... 730 nm. */
export const bandCount = 36;

export const wavelengthsNm: readonly number[] = Array.from(
  { length: bandCount },
  (_, i) => 380 + 10 * i,
);

/** 36 numbers, one a band. */
export type Spectrum = ArrayLike<number>;
