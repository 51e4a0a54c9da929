import * as Comlink from 'comlink';
import { runToEnd } from '../app/core/numeric/run-to-end.ts';
import { type LinearRaster, lightnessPlane } from '../app/core/raster/linear-raster.ts';
import { type EdgesFound, findEdges } from '../app/core/reading/edges/measure-edges.ts';
import type { FindEdgesBeside } from '../app/core/reading/read-picture.ts';
import type { EdgesApi } from './edges.worker.ts';

interface Beside {
  readonly find: (...asked: Parameters<FindEdgesBeside>) => Promise<EdgesFound>;
  /** Rejects where the worker can't be started, or falls. */
  readonly broken: Promise<never>;
}

function startWorker(): Beside {
  const worker = new Worker(new URL('./edges.worker.ts', import.meta.url), { type: 'module' });
  const broken = new Promise<never>((_, fail) => {
    worker.onerror = (event) => {
      event.preventDefault(); // else it is taken for a fault of this worker
      fail(new Error('The worker for edges does not run'));
    };
  });
  broken.catch(() => {});
  return { find: Comlink.wrap<EdgesApi>(worker).find, broken };
}

/** Copies to hand over: a message that copies what it carries takes many times as long. */
function copied(slotMap: Uint8Array, { width, height, red, green, blue }: LinearRaster) {
  const planes = [red.slice(), green.slice(), blue.slice()] as const;
  const raster = { width, height, red: planes[0], green: planes[1], blue: planes[2] };
  const buffers = planes.map(({ buffer }) => buffer);
  return [slotMap, Comlink.transfer(raster, buffers)] as const;
}

/**
 * Finds edges in a worker of its own, started with the first picture; where that fails, here. Undefined where there
 * is one processor only, or a worker can't start workers.
 */
export function createEdgesBeside(): FindEdgesBeside | undefined {
  if (typeof Worker === 'undefined' || navigator.hardwareConcurrency < 2) return undefined;
  let beside: Beside | null = null;
  return async (slotMap, raster, pxPerMm) => {
    try {
      beside ??= startWorker();
      const asked = copied(slotMap, raster);
      return await Promise.race([beside.find(...asked, pxPerMm), beside.broken]);
    } catch {
      return runToEnd(findEdges(slotMap, lightnessPlane(raster), raster, pxPerMm));
    }
  };
}
