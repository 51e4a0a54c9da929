import { type ReadonlySignal, useComputed } from '@preact/signals';
import type { SpotColours } from '../../drawing/spot-colours.ts';
import type { Studio } from '../../state/studio.ts';
import type { Look } from './use-look.ts';
import { kitOf, type ToolsState } from './use-study-tools.ts';

/** The colours of the spots she touches, at most two; empty while she does not. */
export function useSpots(
  { seen, pictures }: Studio,
  look: Look,
  tools: ReadonlySignal<ToolsState>,
): readonly SpotColours[] {
  const pixels = useComputed(() => {
    const kit = kitOf(tools.value);
    if (!kit || !look.touching.value || !pictures.value) return null;
    return kit.pixelsOf(pictures.value.reference);
  });
  const spots = useComputed(() => {
    const kit = kitOf(tools.value);
    const reading = seen.value?.reading;
    if (!kit || !pixels.value || !reading) return [];
    const { raster, sheet } = reading;
    const pxPerMm = Math.sqrt((raster.width * raster.height) / (sheet.widthMm * sheet.heightMm));
    const moving = look.moving.value;
    const at = moving ? [...look.marks.value, moving] : look.marks.value;
    const now = pixels.value;
    return at.slice(0, 2).map((spot) => kit.spotColours(now, spot, pxPerMm));
  });
  return spots.value;
}
