/** What the ticks mean for the plan: `ticked` null where nothing is ticked, of `all` paints. */
export function boxInWords(ticked: number | null, all: number): string {
  if (ticked === null) return `Nothing is ticked yet: all ${all} paints count as yours.`;
  if (ticked === 1)
    return 'One paint is ticked: a plan then has its values only, in this one colour. Tick a second for colour.';
  return `${ticked} of ${all} paints are ticked: plans choose from these.`;
}
