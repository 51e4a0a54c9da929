import type { Touch } from '../../model/touch.ts';
import { touchWindow } from '../../model/touch-window.ts';
import type { Step } from '../../model/wash-plan.ts';
import styles from './touch-list.module.css';

const named = ({ technique }: Touch): string =>
  `${technique[0]?.toUpperCase()}${technique.slice(1)}`;

interface TouchListProps {
  step: Pick<Step, 'touches' | 'brush' | 'board' | 'shineMinutes'>;
  /** At the easel: brush and board in one line, before what is done with them. */
  brief?: boolean;
}

/** How a step is done: the smaller techniques, each with when, then the brush and how the board lies. */
export function TouchList({ step, brief }: TouchListProps) {
  const { touches = [], brush, board, shineMinutes } = step;
  if (touches.length === 0 && !brush && !board) return null;
  const tools = [brush && `Brush: ${brush}.`, board && `Board: ${board}.`].filter(Boolean);
  return (
    <div class={styles.handling}>
      {brief && tools.length > 0 && <p>{tools.join(' ')}</p>}
      {touches.length > 0 && (
        <ul class={styles.touches}>
          {touches.map((touch) => (
            <li key={touch.technique}>
              <b>{named(touch)}</b>, {touchWindow(touch, shineMinutes)}. {touch.text}
            </li>
          ))}
        </ul>
      )}
      {!brief && tools.map((tool) => <p key={tool}>{tool}</p>)}
    </div>
  );
}
