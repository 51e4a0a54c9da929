import { afterEach, expect, test, vi } from 'vitest';
import { runToEnd } from '../../app/core/numeric/run-to-end.ts';
import { emptyRaster, lightnessPlane } from '../../app/core/raster/linear-raster.ts';
import { findEdges } from '../../app/core/reading/edges/measure-edges.ts';
import { createEdgesBeside } from '../../workers/edges-beside.ts';

const pxPerMm = 2;
/** A soft disc, bluish in a warm grey, and the map of what is inside. */
const raster = emptyRaster(160, 120);
const slotMap = new Uint8Array(160 * 120);
for (let y = 0, i = 0; y < 120; y++) {
  for (let x = 0; x < 160; x++, i++) {
    const inside = 40 - Math.hypot(x - 80, y - 60);
    const light = 0.2 + 0.5 / (1 + Math.exp(-inside / (1 + x / 40)));
    raster.red[i] = 0.3;
    raster.green[i] = light;
    raster.blue[i] = light;
    slotMap[i] = inside > 0 ? 1 : 0;
  }
}
const here = () => runToEnd(findEdges(slotMap, lightnessPlane(raster), raster, pxPerMm));

afterEach(() => vi.unstubAllGlobals());

const processors = (hardwareConcurrency: number) =>
  vi.stubGlobal('navigator', { hardwareConcurrency });

test('a worker beside finds what would be found here, time and again, and the picture stays', async () => {
  processors(2);
  const started = vi.fn();
  const TrueWorker = Worker;
  vi.stubGlobal(
    'Worker',
    class extends TrueWorker {
      constructor(...asked: ConstructorParameters<typeof Worker>) {
        super(...asked);
        started();
      }
    },
  );
  const beside = createEdgesBeside();
  const expected = here();
  expect(expected.edges.length).toBeGreaterThan(0);
  for (let n = 0; n < 2; n++) expect(await beside?.(slotMap, raster, pxPerMm)).toEqual(expected);
  expect(started).toHaveBeenCalledOnce();
  expect(raster.red).toHaveLength(slotMap.length);
});

test.each([
  ['can not be started', 'data:text/javascript,throw new Error()'],
  ['is not there', './no-such-worker.js'],
])('where such a worker %s, they are found here', async (_, address) => {
  processors(2);
  const TrueWorker = Worker;
  vi.stubGlobal(
    'Worker',
    class extends TrueWorker {
      constructor() {
        super(address, { type: 'module' });
      }
    },
  );
  expect(await createEdgesBeside()?.(slotMap, raster, pxPerMm)).toEqual(here());
});

test('there is none where it would have no processor, or no worker may start another', () => {
  processors(1);
  expect(createEdgesBeside()).toBe(undefined);
  processors(2);
  vi.stubGlobal('Worker', undefined);
  expect(createEdgesBeside()).toBe(undefined);
});
