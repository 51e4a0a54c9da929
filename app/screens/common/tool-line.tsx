import type { Step } from '../../model/wash-plan.ts';

/** Brush and board in one line: at the easel. Nothing where neither matters. */
export function ToolLine({ step: { brush, board } }: { step: Pick<Step, 'brush' | 'board'> }) {
  const tools = [brush && `Brush: ${brush}.`, board && `Board: ${board}.`].filter(Boolean);
  return tools.length > 0 ? <p>{tools.join(' ')}</p> : null;
}
