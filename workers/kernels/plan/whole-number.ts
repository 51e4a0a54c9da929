/** The number she asked for; RangeError with a sentence where it is none of `least` to `most`. */
export function wholeNumber(asked: number, least: number, most: number, what: string): number {
  if (!Number.isInteger(asked) || asked < least || asked > most) {
    throw new RangeError(`${what}: choose a whole number from ${least} to ${most}.`);
  }
  return asked;
}
