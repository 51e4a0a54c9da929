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

export const layers: readonly Layer[] = [
  { name: 'model', holds: /^app\/model\//, mayUse: [], packages: noPackage },
  {
    name: 'kernels',
    holds: /^workers\/kernels\//,
    mayUse: ['model'],
    packages: noPackage,
  },
  { name: 'api', holds: /^workers\/analysis-api\.ts$/, mayUse: ['model'], packages: noPackage },
  {
    name: 'worker',
    holds: /^workers\//,
    mayUse: ['api', 'kernels', 'model'],
    packages: anyPackage,
  },
  { name: 'drawing', holds: /^app\/drawing\//, mayUse: ['model'], packages: noPackage },
  { name: 'storage', holds: /^app\/storage\//, mayUse: ['api', 'model'], packages: anyPackage },
  { name: 'analysis', holds: /^app\/analysis\//, mayUse: ['api', 'model'], packages: anyPackage },
  { name: 'update', holds: /^app\/update\//, mayUse: ['api', 'model'], packages: anyPackage },
  {
    name: 'state',
    holds: /^app\/state\//,
    mayUse: ['storage', 'analysis', 'drawing', 'update', 'api', 'model', 'demo'],
    packages: anyPackage,
  },
  { name: 'styles', holds: /^app\/styles\//, mayUse: [], packages: noPackage },
  { name: 'demo', holds: /^app\/demo\//, mayUse: [], packages: noPackage },
  {
    name: 'screens',
    holds: /^app\/screens\//,
    mayUse: ['state', 'drawing', 'api', 'model', 'styles', 'demo'],
    packages: /^(preact|@preact\/)/,
  },
  {
    name: 'main',
    holds: /^app\/(main\.tsx|index\.html)$/,
    mayUse: [
      'screens',
      'state',
      'storage',
      'analysis',
      'drawing',
      'update',
      'api',
      'model',
      'styles',
      'demo',
    ],
    packages: /^(preact|@preact\/)/,
  },
  { name: 'build', holds: /^app\/(build\/|vite\.config\.ts$)/, mayUse: [], packages: anyPackage },
  {
    name: 'tools',
    holds: /^app\/tools\//,
    mayUse: ['worker', 'kernels', 'drawing', 'model', 'support'],
    packages: anyPackage,
  },
  { name: 'support', holds: /^tests\/support\//, mayUse: [], packages: anyPackage },
];

export function layerOf(path: string): Layer | undefined {
  return layers.find(({ holds }) => holds.test(path));
}
