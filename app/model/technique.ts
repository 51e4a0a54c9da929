export type Technique =
  | 'wet on dry'
  | 'wet-in-wet'
  | 'glaze'
  | 'dry brush'
  | 'negative painting'
  | 'scraping'
  | 'lifting'
  | 'splatter'
  | 'masking'
  | 'opaque white'
  | 'none';
