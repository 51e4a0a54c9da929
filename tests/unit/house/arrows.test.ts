import { describe, expect, test } from 'vitest';
import { sourceFiles } from './source-files.ts';
import { wrongArrows } from './wrong-arrows.ts';

describe('the arrows between the layers', () => {
  test('every import in app/ and workers/ follows them', async () => {
    const files = await sourceFiles(['app', 'workers'], ['.ts', '.tsx', '.mjs']);
    expect(files.length).toBeGreaterThan(20);
    expect(wrongArrows(files)).toEqual([]);
  });

  test.each([
    ['app/model/paint.ts', "import { y } from '../state/y.ts';"],
    ['app/model/paint.ts', "import { formatHex } from 'culori/fn';"],
    ['app/model/paint.ts', "import type { X } from '../../workers/analysis-api.ts';"],
    ['workers/kernels/values/bands.ts', "import { x } from '../../../app/state/x.ts';"],
    ['workers/kernels/values/bands.ts', "import { x } from '../../analysis-api.ts';"],
    ['workers/kernels/values/bands.ts', "import { x } from 'node:fs';"],
    ['workers/analysis.worker.ts', "import { x } from '../app/storage/x.ts';"],
    ['app/drawing/layers.ts', "import type { X } from '../../workers/analysis-api.ts';"],
    ['app/state/painting.ts', "import { Plan } from '../screens/plan/plan.tsx';"],
    ['app/state/painting.ts', "const late = () => import('../screens/plan/plan.tsx');"],
    ['app/state/painting.ts', "export { Plan } from '../screens/plan/plan.tsx';"],
    ['app/storage/photos.ts', "import {\n  a,\n  b,\n} from '../state/painting.ts';"],
    ['app/analysis/client.ts', "import '../../workers/analysis.worker.ts';"],
    ['app/analysis/client.ts', "import { bands } from '../../workers/kernels/values/bands.ts';"],
    ['app/state/x.ts', "new URL('../../workers/analysis.worker.ts', import.meta.url)"],
    ['app/screens/easel/easel.tsx', "import { openDB } from 'idb';"],
    ['app/screens/easel/easel.tsx', "import { x } from '../../../tests/support/png.ts';"],
    ['app/elsewhere/new.ts', ''],
  ])('%s with %j is refused', (path, text) => {
    expect(wrongArrows([{ path, text }])).toHaveLength(1);
  });

  test.each([
    ['app/main.tsx', "import { Easel } from './screens/easel/easel.tsx';"],
    ['app/screens/easel/easel.tsx', "import styles from './easel.module.css';"],
    ['app/screens/easel/easel.tsx', "// import { openDB } from 'idb';"],
    [
      'app/analysis/worker-host.ts',
      "new Worker(new URL('../../workers/analysis.worker.ts', import.meta.url))",
    ],
  ])('%s with %j is fine', (path, text) => {
    expect(wrongArrows([{ path, text }])).toEqual([]);
  });
});
