import type { Touch } from '../../model/touch.ts';
import { touchWindow } from '../../model/touch-window.ts';
import type { Step } from '../../model/wash-plan.ts';
import styles from './touch-list.module.css';

const named = ({ technique }: Touch): string =>
  `${technique[0]?.toUpperCase()}${technique.slice(1)}`;

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
              <b>{named(touch)}</b>, {touchWindow(touch, shineMinutes)}. {touch.text}
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
