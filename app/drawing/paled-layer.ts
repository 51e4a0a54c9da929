import type { Layer } from './layers.ts';

/** A picture paled towards white by that share, 0..1: lines over it stand out. */
export const paledLayer =
  (under: Layer, share: number): Layer =>
  (context) => {
    under(context);
    context.globalAlpha = share;
    context.fillStyle = 'white';
    context.fillRect(0, 0, context.canvas.width, context.canvas.height);
    context.globalAlpha = 1;
  };
