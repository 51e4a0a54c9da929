import { type ReadonlySignal, useComputed } from '@preact/signals';
import { edgeLayer } from '../../drawing/edge-layer.ts';
import type { Layer } from '../../drawing/layers.ts';
import type { Studio } from '../../state/studio.ts';
import { studyEdges } from '../common/study-edges.ts';
import { onlyLayer, pictureLayers, valuesLayer } from './look-layers.ts';
import type { Look } from './use-look.ts';
import { kitOf, type ToolsState } from './use-study-tools.ts';

/** Everything the picture may show, each made anew only when what it shows has changed. */
export function useStudyLayers(
  studio: Studio,
  look: Look,
  tools: ReadonlySignal<ToolsState>,
): Readonly<Record<string, Layer>> {
  const { seen, pictures } = studio;
  const inPictures = useComputed(
    (): Record<string, Layer> => (pictures.value ? pictureLayers(pictures.value) : {}),
  );
  const values = useComputed((): Record<string, Layer> => {
    const kit = kitOf(tools.value);
    const now = seen.value;
    const limits = look.limits.value;
    if (!now) return {};
    if (!kit || !limits || !now.lightnessMap) return { values: valuesLayer(now) };
    const { histogram } = now.reading.lightness;
    return { values: kit.liveValuesLayer(now.lightnessMap, histogram, limits) };
  });
  const only = useComputed((): Record<string, Layer> => {
    const band = look.only.value;
    if (!seen.value || band === null) return {};
    return { [`only-${band}`]: onlyLayer(seen.value, band) };
  });
  const edges = useComputed((): Record<string, Layer> => {
    const found = studyEdges(studio);
    if (found.length === 0 || !pictures.value) return {};
    return { edges: edgeLayer(pictureLayers(pictures.value).grey, found) };
  });
  const squints = useComputed(() => look.view.value === 'squint');
  const light = useComputed(() => {
    const kit = kitOf(tools.value);
    if (!kit || !squints.value || !pictures.value) return null;
    const pixels = kit.pixelsOf(pictures.value.reference);
    return pixels && kit.reducedLight(pixels);
  });
  const squint = useComputed((): Record<string, Layer> => {
    const kit = kitOf(tools.value);
    if (!kit || !light.value) return {};
    const how = kit.squintOf(look.squint.value);
    return {
      squint: kit.squintLayer(light.value, how, false),
      'squint-grey': kit.squintLayer(light.value, how, true),
    };
  });
  return { ...inPictures.value, ...values.value, ...only.value, ...edges.value, ...squint.value };
}
