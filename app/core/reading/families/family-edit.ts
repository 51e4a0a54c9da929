/** a* and b* of a family as they stood in the reading she saw. */
export type FamilyColour = readonly [a: number, b: number];

/**
 * A change of the colour families by hand. Families are named by their colours, not their numbers, so
 * that the change finds them again when the picture is read anew.
 */
export type FamilyEdit =
  /** All: one colour throughout. */
  | { readonly join: readonly [FamilyColour, FamilyColour] | 'all' }
  | { readonly part: FamilyColour };
