import type { SoftBlend } from '../../model/soft-blend.ts';

/** A slot map small enough for a stage, and how its soft edges run. */
export interface StageMap {
  readonly slotMap: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly soft: SoftBlend | null;
}
