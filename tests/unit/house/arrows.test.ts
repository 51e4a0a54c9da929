import { describe, expect, test } from 'vitest';
import { importCircles } from './import-circles.ts';
import { sourceFiles } from './source-files.ts';
import { wrongArrows } from './wrong-arrows.ts';

describe('the arrows between the layers', () => {
  test('every import in app/ and workers/ follows them', async () => {
    const files = await sourceFiles(['app', 'workers'], ['.ts', '.tsx', '.mjs']);
    expect(files.length).toBeGreaterThan(20);
    expect(wrongArrows(files)).toEqual([]);
  });

  test.each([
    ['app/core/paint/paint.ts', "import { y } from '../../state/y.ts';"],
    ['app/core/paint/paint.ts', "import { formatHex } from 'culori/fn';"],
    ['app/core/paint/paint.ts', "import type { X } from '../../../workers/api.ts';"],
    ['app/core/paint/paint.ts', "import type { Step } from '../plan/plan.ts';"],
    ['app/core/reading/values/bands.ts', "import { x } from '../../../state/x.ts';"],
    ['app/core/reading/values/bands.ts', "import { x } from 'node:fs';"],
    ['app/core/reading/reading.ts', "import type { Decision } from '../decisions/painting.ts';"],
    ['app/core/palette/search.ts', "import { solve } from '../plan/solve/solve-passage.ts';"],
    ['app/core/limits.ts', "import { x } from './numeric/memo.ts';"],
    ['workers/analysis.worker.ts', "import { x } from '../app/storage/x.ts';"],
    ['app/drawing/layers.ts', "import type { X } from '../../workers/api.ts';"],
    ['app/state/painting.ts', "import { Plan } from '../screens/plan/plan.tsx';"],
    ['app/state/painting.ts', "import { Button } from '../ui/controls/button.tsx';"],
    ['app/state/painting.ts', "const late = () => import('../screens/plan/plan.tsx');"],
    ['app/state/painting.ts', "export { Plan } from '../screens/plan/plan.tsx';"],
    ['app/storage/photos.ts', "import {\n  a,\n  b,\n} from '../state/painting.ts';"],
    ['app/client/client.ts', "import '../../workers/analysis.worker.ts';"],
    ['app/client/client.ts', "import { jobs } from '../../workers/jobs.ts';"],
    ['app/state/x.ts', "new URL('../../workers/analysis.worker.ts', import.meta.url)"],
    ['app/ui/controls/button.tsx', "import { Plan } from '../../screens/plan/plan.tsx';"],
    ['app/screens/easel/easel.tsx', "import { openDB } from 'idb';"],
    ['app/screens/easel/easel.tsx', "import { x } from '../../../tests/support/png.ts';"],
    ['app/core/elsewhere/new.ts', ''],
    ['app/elsewhere/new.ts', ''],
  ])('%s with %j is refused', (path, text) => {
    expect(wrongArrows([{ path, text }])).toHaveLength(1);
  });

  test.each([
    ['app/main.tsx', "import { Easel } from './screens/easel/easel.tsx';"],
    ['app/screens/easel/easel.tsx', "import styles from './easel.module.css';"],
    ['app/screens/easel/easel.tsx', "// import { openDB } from 'idb';"],
    [
      'app/client/call-desk.ts',
      "new Worker(new URL('../../workers/analysis.worker.ts', import.meta.url))",
    ],
  ])('%s with %j is fine', (path, text) => {
    expect(wrongArrows([{ path, text }])).toEqual([]);
  });
});

describe('circles of files', () => {
  test('no file imports another that leads back to it, types included', async () => {
    expect(importCircles(await sourceFiles(['app', 'workers'], ['.ts', '.tsx']))).toEqual([]);
  });

  test('a circle of three would be seen, and of what hangs on it only the circle', () => {
    const file = (path: string, ...names: string[]) => ({
      path,
      text: names.map((name) => `import type { X } from './${name}.ts';\n`).join(''),
    });
    const files = [file('z.ts', 'a'), file('a.ts', 'b'), file('b.ts', 'c'), file('c.ts', 'a', 'd')];
    expect(importCircles([...files, file('d.ts')])).toEqual([['a.ts', 'b.ts', 'c.ts']]);
  });
});
