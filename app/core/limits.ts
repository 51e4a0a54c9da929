/** Smallest short side of a shape she can paint, mm on the sheet, by wash (own proposal). */
export const smallestShapeMm = { first: 10, second: 5, darks: 2, details: 1 } as const;

/** Within this of the paper a shape is kept white, L*. */
export const reserveWithin = 6;
