import { useSignal } from '@preact/signals';
import type { Layer } from '../../drawing/layers.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import { Picture } from '../common/picture.tsx';
import { stepLayer } from '../common/step-layers.ts';

interface StagePictureProps {
  label: string;
  size: PixelSize;
  layers: Readonly<Record<string, Layer>>;
  /** What is shown; each also in grey. */
  view: string;
}

/** The picture of a stage: a tap for grey, which nothing round it has to follow. */
export function StagePicture({ label, size, layers, view }: StagePictureProps) {
  const grey = useSignal(false);
  return (
    <Picture
      label={label}
      tapLabel={grey.value ? 'Tap for colour' : 'Tap for grey'}
      size={size}
      layers={layers}
      show={stepLayer(view, grey.value)}
      tapShows={stepLayer(view, !grey.value)}
      onTap={() => {
        grey.value = !grey.value;
      }}
    />
  );
}
