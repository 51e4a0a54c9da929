import type { Easel } from '../../state/easel.ts';
import type { EaselSenses } from '../../state/easel-senses.ts';
import { SensesPanel } from './senses-panel.tsx';

interface MorePanelsProps {
  easel: Easel;
  senses: EaselSenses;
}

/** All that stands in the sheet of further actions, what is needed soonest first. */
export function MorePanels({ senses }: MorePanelsProps) {
  return <SensesPanel senses={senses} />;
}
