/**
 * Light thrown back by the surface before it meets paint: added once, after all layers.
 * Dry 0.03: source as for the optics table. Wet 0.012: chosen so that masstones dry 2.3 L* lighter on
 * average, the mean shift measured on 75 paints (MacEvoy, Watercolor drying shifts).
 */
export const surfaceFloor = { dry: 0.03, wet: 0.012 } as const;

export type SurfaceState = keyof typeof surfaceFloor;
