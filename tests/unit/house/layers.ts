/** Every place for code in app/ and workers/, first match counts; where its imports may lead. */
export interface Layer {
  readonly name: string;
  readonly holds: RegExp;
  /** Other layers it may import from; its own is always allowed. */
  readonly mayUse: readonly string[];
  readonly packages: RegExp;
}

const anyPackage = /./;
const noPackage = /^$/;
const preact = /^(preact|@preact\/)/;

/** The rooms of the core, from the ground up: which of the rooms below it each may use. */
const coreRooms: Readonly<Record<string, readonly string[]>> = {
  // First, as their files lie inside the room of words: what is said of a room's things stands above that room.
  'words/plan': [
    ...['limits', 'colour', 'raster', 'paint', 'drying', 'decisions'],
    ...['words', 'words/paint', 'words/drying'],
  ],
  'words/paint': ['limits', 'numeric', 'colour', 'words', 'raster', 'paint'],
  'words/drying': ['limits', 'colour', 'words', 'drying'],
  'words/reference': ['limits', 'words', 'raster', 'reference'],
  'words/reading': ['limits', 'colour', 'words', 'raster', 'reference', 'reading'],
  'words/outline': ['limits', 'words', 'outline'],
  'words/decisions': ['limits', 'colour', 'words', 'paint', 'reading', 'decisions'],
  'words/palette': ['limits', 'colour', 'words', 'words/plan', 'paint', 'reading', 'palette'],
  'words/compare': [
    ...['limits', 'colour', 'words', 'words/paint', 'words/plan', 'raster', 'paint', 'reading'],
    ...['plan', 'compare'],
  ],
  'words/session': [
    ...['limits', 'colour', 'words', 'words/drying', 'words/plan', 'paint', 'drying', 'reading'],
    ...['plan', 'compare', 'session'],
  ],
  limits: [],
  numeric: ['limits'],
  colour: ['limits', 'numeric'],
  raster: ['limits', 'numeric', 'colour'],
  words: ['limits', 'colour', 'raster'],
  paint: ['limits', 'numeric', 'colour', 'words', 'raster'],
  drying: ['limits', 'numeric', 'colour', 'words'],
  reference: ['limits', 'colour', 'words', 'raster'],
  reading: ['limits', 'numeric', 'colour', 'words', 'raster', 'reference'],
  outline: ['limits', 'numeric', 'colour', 'words', 'raster', 'reading'],
  decisions: ['limits', 'numeric', 'colour', 'words', 'paint', 'drying', 'reference', 'reading'],
  palette: ['limits', 'numeric', 'colour', 'words', 'words/plan', 'paint', 'reading', 'decisions'],
  plan: [
    ...['limits', 'numeric', 'colour', 'words', 'words/plan', 'raster', 'paint', 'drying'],
    ...['reading', 'decisions', 'palette'],
  ],
  compare: [
    ...['limits', 'numeric', 'colour', 'words', 'words/plan', 'raster', 'paint', 'reading'],
    ...['palette', 'plan'],
  ],
  session: [
    ...['limits', 'numeric', 'colour', 'words', 'words/plan', 'paint', 'drying', 'reading', 'plan'],
    'compare',
  ],
};

const core: readonly Layer[] = Object.entries(coreRooms).map(([name, mayUse]) => ({
  name,
  holds: new RegExp(`^app/core/${name}(/|\\.ts$)`),
  mayUse,
  packages: noPackage,
}));
const wholeCore = core.map(({ name }) => name);

const forState = ['storage', 'client', 'drawing', 'update', 'api', 'demo', ...wholeCore];
const forScreens = ['ui', 'state', 'drawing', 'api', 'styles', 'demo', ...wholeCore];

export const layers: readonly Layer[] = [
  ...core,
  { name: 'api', holds: /^workers\/api\.ts$/, mayUse: wholeCore, packages: noPackage },
  { name: 'worker', holds: /^workers\//, mayUse: ['api', ...wholeCore], packages: anyPackage },
  { name: 'drawing', holds: /^app\/drawing\//, mayUse: wholeCore, packages: noPackage },
  {
    name: 'storage',
    holds: /^app\/storage\//,
    mayUse: ['api', ...wholeCore],
    packages: anyPackage,
  },
  { name: 'client', holds: /^app\/client\//, mayUse: ['api', ...wholeCore], packages: anyPackage },
  { name: 'update', holds: /^app\/update\//, mayUse: [], packages: anyPackage },
  { name: 'state', holds: /^app\/state\//, mayUse: forState, packages: anyPackage },
  { name: 'styles', holds: /^app\/styles\//, mayUse: [], packages: noPackage },
  { name: 'demo', holds: /^app\/demo\//, mayUse: [], packages: noPackage },
  {
    name: 'ui',
    holds: /^app\/ui\//,
    mayUse: forScreens.filter((name) => name !== 'ui'),
    packages: preact,
  },
  { name: 'screens', holds: /^app\/screens\//, mayUse: forScreens, packages: preact },
  {
    name: 'main',
    holds: /^app\/(main\.tsx|index\.html)$/,
    mayUse: ['screens', ...forScreens, ...forState],
    packages: preact,
  },
  { name: 'build', holds: /^app\/(build\/|vite\.config\.ts$)/, mayUse: [], packages: anyPackage },
  {
    name: 'tools',
    holds: /^app\/tools\//,
    mayUse: ['worker', 'drawing', 'build', 'support', ...wholeCore],
    packages: anyPackage,
  },
  { name: 'support', holds: /^tests\/support\//, mayUse: [], packages: anyPackage },
];

export function layerOf(path: string): Layer | undefined {
  return layers.find(({ holds }) => holds.test(path));
}
