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

type Tools = Pick<Step, 'areas' | 'brush' | 'board'>;

/** Brush and board, a sentence each; where a wash is painted in two ways, of each area. */
function toolLines({ areas, brush, board }: Tools): string[] {
  if (!areas) return [brush && `Brush: ${brush}.`, board && `Board: ${board}.`].filter(isSaid);
  return areas.map((area) => {
    const paper = area.technique === 'wet-in-wet' ? 'wetted' : 'dry';
    const tools = [area.brush, area.board && `board ${area.board}`].filter(isSaid).join('; ');
    return `On ${paper} paper ${area.name}: ${tools}.`;
  });
}

const isSaid = (text: string | undefined): text is string => Boolean(text);

interface TouchListProps {
  step: Tools & Pick<Step, 'touches' | 'shineMinutes'>;
  /** Not brush and board: at the easel they stand in a line of their own. */
  techniquesOnly?: boolean;
}

/** How a step is done: the smaller techniques, each with when, then the brush and how the board lies. */
export function TouchList({ step, techniquesOnly }: TouchListProps) {
  const { touches = [], shineMinutes } = step;
  const tools = techniquesOnly ? [] : toolLines(step);
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
export function ToolLine({ step }: { step: Tools }) {
  const tools = toolLines(step);
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
