import { type ReadonlySignal, useComputed, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { Layer } from '../../drawing/layers.ts';
import { wholePicture, type Zoom } from '../../model/picture-zoom.ts';
import type { Easel } from '../../state/easel.ts';
import type { PictureCalls } from '../../state/picture-calls.ts';
import { stepLayers } from '../common/step-layers.ts';
import { useSoft } from '../common/use-soft.ts';
import { bandsLayer, stillLayers } from './easel-layers.ts';
import { bandsOf, type EaselView, shownView } from './easel-view.ts';

/** What of the picture is looked at, and the layers to show it with. */
export function useEaselView(easel: Easel, calls: PictureCalls) {
  const asked = useSignal<EaselView>('where');
  const grey = useSignal(false);
  const zoom = useSignal<Zoom>(wholePicture);
  /** A band she picked herself, for the step she picked it at. */
  const picked = useSignal<{ key: string; band: number } | null>(null);

  const bands = useComputed<ReadonlySet<number>>(() => {
    const step = easel.step.value;
    const all = easel.desk.value?.seen.reading.bands.map(({ band }) => band) ?? [];
    if (!step) return new Set();
    if (picked.value?.key === step.key) return new Set([picked.value.band]);
    return bandsOf(step, all, easel.bandsDone.value);
  });
  const desk = easel.desk.value;
  const picture = useMemo(
    () => desk && { slotMap: desk.seen.slotMap, size: desk.seen.reading.raster, edges: desk.edges },
    [desk?.seen, desk?.edges],
  );
  const blend = useSoft(calls, picture);
  const soft = useSignal(blend);
  soft.value = blend;
  const still = useComputed(() => {
    const at = easel.desk.value;
    return at ? stillLayers(at.seen, at.edges) : {};
  });
  const ofStep = useComputed(() => {
    const at = easel.desk.value;
    const step = easel.step.value;
    return at && step ? stepLayers(at.seen, step, soft.value) : {};
  });
  const band = useComputed(() => {
    const at = easel.desk.value;
    return at ? { band: bandsLayer(at.seen, bands.value) } : {};
  });
  const layers: ReadonlySignal<Record<string, Layer>> = useComputed(() => ({
    ...ofStep.value,
    ...band.value,
    ...still.value,
  }));
  const shown = useComputed(() => {
    const step = easel.step.value;
    return step ? shownView(asked.value, step) : 'reference';
  });
  return useMemo(
    () => ({
      shown,
      grey,
      zoom,
      bands,
      layers,
      look(view: EaselView) {
        asked.value = view;
      },
      toggleGrey() {
        grey.value = !grey.value;
      },
      pick(band: number) {
        const key = easel.step.peek()?.key;
        if (key === undefined) return;
        picked.value = { key, band };
        asked.value = 'band';
      },
    }),
    [easel],
  );
}

export type EaselViewState = ReturnType<typeof useEaselView>;
