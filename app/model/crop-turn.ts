/** How far a photo can be straightened either way, degrees. */
export const mostStraightening = 10;

/** Whole quarter turns clockwise in a turn, 0..3. */
export const quartersOf = (turn: number): number => ((Math.round(turn / 90) % 4) + 4) % 4;

/** What a turn has beyond its quarter turns, degrees clockwise, -45..45. */
export const straighteningOf = (turn: number): number => turn - Math.round(turn / 90) * 90;

/** The same turn counted from 0 up to 360 degrees. */
export const wrappedTurn = (turn: number): number => ((turn % 360) + 360) % 360;

/** The turn of so many quarters and so much straightening (limited to 10 degrees either way). */
export function turnOf(quarters: number, straightening: number): number {
  const limited = Math.min(mostStraightening, Math.max(-mostStraightening, straightening));
  return wrappedTurn(quarters * 90 + limited);
}
