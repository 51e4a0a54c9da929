// The worker beside the analysis worker: it finds the edges while that one reads on.

import * as Comlink from 'comlink';
import { runToEnd } from '../app/core/numeric/run-to-end.ts';
import { type LinearRaster, lightnessPlane } from '../app/core/raster/linear-raster.ts';
import { findEdges } from '../app/core/reading/edges/measure-edges.ts';

/** What is asked of it. */
const edgesApi = {
  find: (slotMap: Uint8Array, raster: LinearRaster, pxPerMm: number) =>
    runToEnd(findEdges(slotMap, lightnessPlane(raster), raster, pxPerMm)),
};

export type EdgesApi = typeof edgesApi;

Comlink.expose(edgesApi);
