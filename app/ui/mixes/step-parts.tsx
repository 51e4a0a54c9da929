import { listMaterials } from '../../core/plan/list-materials.ts';
import type { SmallTechnique, Step, WashPlan } from '../../core/plan/plan.ts';
import { capitalize } from '../../core/words/numbers.ts';
import { techniqueWindow } from '../../core/words/plan/techniques.ts';
import { brushesInWords } from '../../core/words/plan/tools.ts';
import { words } from '../../core/words/plan/words.ts';
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
  const brushes = brushesInWords(brush).join('; ');
  if (!areas)
    return [brushes && `Brush: ${brushes}.`, board && `Board: ${words(board)}.`].filter(isText);
  return areas.map((area) => {
    const paper = area.technique === 'wet-in-wet' ? 'wetted' : 'dry';
    const tools = [...brushesInWords(area.brush), area.board && `board ${words(area.board)}`];
    return `On ${paper} paper ${words(area.name)}: ${tools.filter(isText).join('; ')}.`;
  });
}

const isText = (text: string | undefined): text is string => Boolean(text);

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
              <b>{named(touch)}</b>, {techniqueWindow(touch, shineMinutes)}. {words(touch.text)}
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
        <strong>Mind:</strong> {words(consequence)}
      </p>
      {alsoHappens.length > 0 && (
        <details>
          <summary class={styles.more}>What else it does</summary>
          {alsoHappens.map(words).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </details>
      )}
    </div>
  );
}
