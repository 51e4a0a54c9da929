/**
 * Whether a set of paints is another palette than one she already has before her: smaller, or with at least two
 * paints that are not in it.
 */
export function isDifferent<T>(set: readonly T[], from: readonly T[]): boolean {
  if (set.length < from.length) return true;
  let news = 0;
  for (const each of set) if (!from.includes(each)) news += 1;
  return news >= 2;
}
