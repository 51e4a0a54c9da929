import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { handedOn } from '../../core/words/notices.ts';
import { createHandOut } from '../../state/backup/hand-out.ts';
import { describeFault } from '../../state/describe-fault.ts';
import { Button } from './button.tsx';

interface HandOutButtonsProps {
  /** What is handed on: 'the plan as a picture'. */
  what: string;
  /** Makes the files when they are asked for; none: there is nothing to hand on. */
  make: () => Promise<readonly File[]>;
}

const nothing = 'There is nothing to hand on: it could not be made here, or is no longer kept.';

/** To another app by the share sheet, where this browser shares pictures; to a file anywhere. */
export function HandOutButtons({ what, make }: HandOutButtonsProps) {
  const handOut = useMemo(() => createHandOut(window), []);
  const canShare = useMemo(
    () => handOut.canShare([new File([], 'a.png', { type: 'image/png' })]),
    [handOut],
  );
  const said = useSignal('');
  const problem = useSignal('');
  const busy = useSignal(false);

  async function give(way: 'share' | 'save'): Promise<void> {
    busy.value = true;
    said.value = '';
    problem.value = '';
    try {
      const files = await make();
      if (files.length === 0) problem.value = nothing;
      else if (way === 'share') said.value = (await handOut.share(files)) ? handedOn : '';
      else for (const file of files) said.value = (await handOut.save(file)) ? 'Saved.' : '';
    } catch (fault) {
      problem.value = describeFault(fault);
    }
    busy.value = false;
  }

  return (
    <>
      {canShare && (
        <Button disabled={busy.value} onClick={() => void give('share')}>
          Hand on {what}
        </Button>
      )}
      <Button disabled={busy.value} onClick={() => void give('save')}>
        Save {what}
      </Button>
      {said.value && <p role="status">{said.value}</p>}
      {problem.value && <p role="alert">{problem.value}</p>}
    </>
  );
}
