// Light and shade on one surface scale its linear light, so they scale L* + 16, a* and b* alike (the
// cube-root part of CIE L*a*b*). Divided by L* + 16 a colour is the same in sun and in shade: one
// puddle at several strengths. The unit: a* and b* the colour would have at L* 50.
const atMiddle = 50 + 16;

/** Factor that takes a* and b* of a colour of this L* to what they would be at L* 50. */
export const shadeFree = (lightness: number): number => atMiddle / (Math.max(0, lightness) + 16);

/** Below this L* a photo's colour is mostly noise and weighs nothing ... */
const blind = 10;
/** ... and from this on it counts in full. Own limits; about 12 is where most cameras give up. */
const sure = 16;

/** How far the colour of a pixel of this L* can be trusted, 0..1. */
export function colourTrust(lightness: number): number {
  const t = (lightness - blind) / (sure - blind);
  return t <= 0 ? 0 : Math.min(t, 1);
}
