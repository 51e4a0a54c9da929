import type { EdgeWish } from '../../model/edge-wishes.ts';

/** What the four choices are called on screen. */
export const wishNames: Readonly<Record<EdgeWish, string>> = {
  keep: 'Keep',
  soften: 'Soften',
  lose: 'Lose',
  sharpen: 'Sharpen',
};
