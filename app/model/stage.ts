/** What the long job from photo to plan is busy with; the screens put it into words. */
export type Stage = 'opening' | 'looking' | 'values' | 'colours' | 'shapes' | 'paints' | 'washes';
