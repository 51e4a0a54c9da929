import type { Step, WashPlan } from '../../model/wash-plan.ts';

/** L* of every slot after a step, dry, by band, family and passage. */
export const stepLightness = ({ slots }: Pick<WashPlan, 'slots'>, { after }: Pick<Step, 'after'>) =>
  slots.map(({ band, family, passage }, i) => ({
    band,
    family,
    passage,
    lightness: after[i]?.[0] ?? null,
  }));
