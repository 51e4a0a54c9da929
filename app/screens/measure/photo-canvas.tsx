import { useLayoutEffect, useRef } from 'preact/hooks';

/** A bitmap on a canvas of its size. */
export function PhotoCanvas({ photo, label }: { photo: ImageBitmap; label: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element || photo.width === 0) return; // a bitmap that was let go has no size
    element.width = photo.width;
    element.height = photo.height;
    element.getContext('2d')?.drawImage(photo, 0, 0);
  }, [photo]);
  return <canvas ref={canvas} role="img" aria-label={label} />;
}
