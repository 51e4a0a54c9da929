/** A share 0..1 in words; what is there but small is not called nothing. */
export const percent = (share: number): string =>
  share > 0 && share < 0.01 ? 'under 1 %' : `${Math.round(share * 100)} %`;
