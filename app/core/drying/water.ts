/** Water a kind of wash puts down, g/m2 (own, fitted to reported times; label as estimates). */
export const usualWaterGrams = {
  accents: 15,
  details: 15,
  splatter: 15,
  lift: 20,
  glaze: 20,
  stroke: 40,
  wash: 60,
  wetInWet: 150,
} as const;

export type WaterKind = keyof typeof usualWaterGrams;

/** The same where a wash is to dry sooner and still to run, g/m2 (own); the rest as usual. */
export const reducedWaterGrams: Partial<Record<WaterKind, number>> = {
  stroke: 30,
  wash: 40,
  wetInWet: 100,
};

/** Water of one stroke whose edge is to be softened, g/m2 (own estimate). */
export const strokeWaterGrams = 30;
