/** What becomes of an edge on the sheet, whatever it is in the photo. */
export type EdgeWish = 'keep' | 'soften' | 'lose' | 'sharpen';

export const edgeWishes: readonly EdgeWish[] = ['keep', 'soften', 'lose', 'sharpen'];
