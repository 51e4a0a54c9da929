import { listMaterials } from '../../core/plan/list-materials.ts';
import type { SmallTechnique, Step, WashPlan } from '../../core/plan/plan.ts';
import { techniqueWindow } from '../../core/plan/techniques/wetness-windows.ts';
import { capitalize } from '../../core/words/numbers.ts';
import styles from './step-parts.module.css';

/** What to lay out before she starts: paints, brushes, and what else the plan asks for. */
export function LayOutList({ plan }: { plan: WashPlan }) {
  return (
    <dl class={styles.list} data-testid="lay-out">
      {listMaterials(plan).map(({ name, things }) => (
        <div key={name} class={styles.row}>
          <dt>{name}</dt>
          <dd>{things.join('; ')}</dd>
        </div>
      ))}
    </dl>
  );
}

const named = ({ technique }: SmallTechnique): string => capitalize(technique);

interface TouchListProps {
  step: Pick<Step, 'touches' | 'brush' | 'board' | 'shineMinutes'>;
  /** Not brush and board: at the easel they stand in a line of their own. */
  techniquesOnly?: boolean;
}

/** How a step is done: the smaller techniques, each with when, then the brush and how the board lies. */
export function TouchList({ step, techniquesOnly }: TouchListProps) {
  const { touches = [], brush, board, shineMinutes } = step;
  const tools = techniquesOnly
    ? []
    : [brush && `Brush: ${brush}.`, board && `Board: ${board}.`].filter(Boolean);
  if (touches.length === 0 && tools.length === 0) return null;
  return (
    <div class={styles.handling}>
      {touches.length > 0 && (
        <ul class={styles.touches}>
          {touches.map((touch) => (
            <li key={touch.technique}>
              <b>{named(touch)}</b>, {techniqueWindow(touch, shineMinutes)}. {touch.text}
            </li>
          ))}
        </ul>
      )}
      {tools.map((tool) => (
        <p key={tool}>{tool}</p>
      ))}
    </div>
  );
}

/** Brush and board in one line: at the easel. Nothing where neither matters. */
export function ToolLine({ step: { brush, board } }: { step: Pick<Step, 'brush' | 'board'> }) {
  const tools = [brush && `Brush: ${brush}.`, board && `Board: ${board}.`].filter(Boolean);
  return tools.length > 0 ? <p>{tools.join(' ')}</p> : null;
}

/** The gravest of what will happen because of her changes, or of the time she has, the rest on request; nothing where nothing speaks against them. */
export function Consequence({ step }: { step: Pick<Step, 'consequence' | 'alsoHappens'> }) {
  const { consequence, alsoHappens = [] } = step;
  if (!consequence) return null;
  return (
    <div class={styles.consequence} data-testid="consequence">
      <p>
        <strong>Mind:</strong> {consequence}
      </p>
      {alsoHappens.length > 0 && (
        <details>
          <summary class={styles.more}>What else it does</summary>
          {alsoHappens.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </details>
      )}
    </div>
  );
}
