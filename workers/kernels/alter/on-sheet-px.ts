/** Farther than this share of the long side no softening goes, however small the sheet. */
const largestShare = 0.015;

/** A length on the sheet in px of the raster: at least 1, and small beside the picture. */
export const onSheetPx = (mm: number, pxPerMm: number, longSidePx: number): number =>
  Math.max(1, Math.min(mm * pxPerMm, largestShare * longSidePx));
