import { afterEach, beforeEach } from 'vitest';

/** Area of every off-screen canvas made in this test, px. */
export function recordCanvases(): { readonly areas: number[] } {
  const record: { areas: number[] } = { areas: [] };
  const Real = OffscreenCanvas;
  beforeEach(() => {
    record.areas = [];
    globalThis.OffscreenCanvas = class extends Real {
      constructor(width: number, height: number) {
        super(width, height);
        record.areas.push(width * height);
      }
    };
  });
  afterEach(() => {
    globalThis.OffscreenCanvas = Real;
  });
  return record;
}
