import type { Easel } from '../../state/easel.ts';
import { Button } from '../common/button.tsx';

/** The last tap undone, whatever it was; once more for the one before it. */
export function TakeBackPanel({ easel }: { easel: Easel }) {
  const act = easel.lastAct.value;
  return (
    <Button large wide disabled={!act} onClick={easel.takeBack}>
      {act ? `Take back ‘${act.words}’` : 'Nothing to take back'}
    </Button>
  );
}
