/** Ids of eight paints of the built-in list: a palette among them is found in a moment, among all only after seconds. */
export const fewPaints: readonly string[] = [
  'py43-yellow-ochre',
  'py74-arylide-yellow',
  'pv19-quinacridone-red',
  'pr101-red-iron',
  'pb29-ultramarine-blue',
  'pb153-phthalocyanine-blue',
  'pg7-phthalocyanine-green',
  'pbr7-burnt-sienna',
];
