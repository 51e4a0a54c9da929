export interface Part {
  /** Paint id. */
  readonly paint: string;
  /** Whole parts; those of one mix sum to at most 8. */
  readonly parts: number;
}
